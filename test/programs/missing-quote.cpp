// A text is not closed.
void setup() {
  Serial.println("hello);     // expect problem: program.openText
}
void loop() {}
