// And in constants.
void setup() {
  digitalWrite(13, High);     // expect problem: program.unknownName name=High near=HIGH
}
void loop() {}
