// The last brace is missing.
void setup() {
}
void loop() {
  delay(10);                  // expect problem: program.expected expected=} found=
