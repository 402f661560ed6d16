// == compares a letter with a text: they cannot be compared.
char c = 'a';
void setup() {
  if (c == "a") c = 'b';      // expect problem: program.badOperands operator===
}
void loop() {}
