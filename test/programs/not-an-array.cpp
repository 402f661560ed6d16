// Only arrays, pointers and Strings have places.
int x = 5;
void setup() {
  x[0] = 1;                   // expect problem: program.notArray found=int
}
void loop() {}
