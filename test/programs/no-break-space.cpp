// A pasted no-break space looks like a blank and is none.
void setup() {
  delay(10);                  // expect problem: program.unknownCharacter codePoint=160
}
void loop() {}
