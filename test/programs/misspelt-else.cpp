// esle is a name nobody knows.
int x = 1;
void setup() {
  if (x == 1) {
    x = 2;
  } esle {                    // expect problem: program.expected expected=; found={
    x = 3;
  }
}
void loop() {}
