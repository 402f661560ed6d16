// Quotes from a word processor are no quotes.
void setup() {
  Serial.println(“hello”);    // expect problem: program.unknownCharacter found=“
}
void loop() {}
