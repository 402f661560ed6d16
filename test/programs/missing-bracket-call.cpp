// A call is not closed.
void setup() {
  digitalWrite(13, HIGH;      // expect problem: program.expected expected=) found=;
}
void loop() {}
