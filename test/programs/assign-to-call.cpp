// digitalRead gives a value; it is no place.
void setup() {
  digitalRead(2) = HIGH;      // expect problem: program.notAssignable
}
void loop() {}
