// Values are divided by commas.
void setup() {
  digitalWrite(13 HIGH);      // expect problem: program.expected expected=) found=0x1
}
void loop() {}
