// for is divided by semicolons.
void setup() {
  for (int i = 0, i < 4, i++) {}  // expect problem: program.expected expected=;
}
void loop() {}
