// An if outside every function.
int x = 1;
void setup() {}
void loop() {
  x++; }
  if (x > 3) x = 0;           // expect problem: program.outside found=if
