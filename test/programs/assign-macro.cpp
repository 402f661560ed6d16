// HIGH is a number, and a number cannot be assigned to.
void setup() {
  HIGH = 1;                   // expect problem: program.notAssignable
}
void loop() {}
