// A brace too many closes the function early.
void setup() {
}
}                             // expect problem: program.extraBrace
void loop() {}
