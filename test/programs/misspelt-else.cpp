// esle is a name nobody knows.
int x = 1;
void setup() {
  if (x == 1) {
    x = 2;
  } esle {                    // expect problem: program.unknownName name=esle
    x = 3;
  }
}
void loop() {}
// expect problem at 6: program.expected expected=; found={
