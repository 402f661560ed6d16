// Brackets of if do not match.
int a = 1;
void setup() {
  if ((a == 1) {              // expect problem: program.expected expected=) found={
    a = 2;
  }
}
void loop() {}
