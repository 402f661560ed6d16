// What gives nothing has no value.
void f() {}
void setup() {
  int x = f();                // expect problem: program.cannotConvert from=void to=int
}
void loop() {}
