// An array whose size is computed compiles in class and is not run here.
void setup() {
  int n = analogRead(A0);
  int list[n];                // expect problem: program.notSupported feature=computed array size
}
void loop() {}
