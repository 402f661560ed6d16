// 2x is no product.
int x = 3;
void setup() {
  int y = 2x;                 // expect problem: program.badNumber found=2x
}
void loop() {}
