// So do functions of one's own.
int add(int a, int b) { return a + b; }
void setup() {
  int x = add(1);             // expect problem: program.argumentCount name=add expected=2 found=1
}
void loop() {}
