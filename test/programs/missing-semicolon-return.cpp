// And behind return.
int twice(int n) {
  return 2 * n                // expect problem: program.expected expected=; found=}
}
void setup() {}
void loop() {}
