// A dash is no minus.
void setup() {
  int x = 5 – 3;              // expect problem: program.unknownCharacter found=–
}
void loop() {}
