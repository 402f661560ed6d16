// A semicolon of another alphabet is none.
void setup() {
  delay(10)；                 // expect problem: program.unknownCharacter found=；
}
void loop() {}
