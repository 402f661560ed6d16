// An int is as near to long as to float.
void f(long n) {}
void f(float n) {}
void setup() {
  f(3);                       // expect problem: program.ambiguous name=f
}
void loop() {}
