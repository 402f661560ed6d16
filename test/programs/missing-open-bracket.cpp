// if without its bracket.
int a = 1;
void setup() {
  if a == 1) {                // expect problem: program.expected expected=( found=a
    a = 2;
  }
}
void loop() {}
