// A semicolon is missing behind the last word of the line before.
void setup() {
  pinMode(13, OUTPUT)         // expect problem: program.expected expected=; found=digitalWrite
  digitalWrite(13, HIGH);
}
void loop() {}
