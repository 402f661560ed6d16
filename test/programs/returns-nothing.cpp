// A void function gives nothing.
void f() {
  return 5;                   // expect problem: program.returnsNothing name=f
}
int g() {
  return;                     // expect problem: program.returnsSomething name=g
}
void setup() { f(); g(); }
void loop() {}
