// A case can stand once.
void setup() {
  switch (3) {
    case 1: break;
    case 1: break;            // expect problem: program.duplicateCase value=1 firstLine=4
  }
}
void loop() {}
