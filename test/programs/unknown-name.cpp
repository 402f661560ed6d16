// A variable that was never declared.
void setup() {
  digitalWrite(led, HIGH);    // expect problem: program.unknownName name=led
}
void loop() {}
