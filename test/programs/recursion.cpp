// Each call has its own variables.
int fibonacci(int n) {
  if (n < 2) return n;
  int before = fibonacci(n - 1);
  return before + fibonacci(n - 2);
}
void countDown(int n) {
  if (n == 0) return;
  Serial.print(n);
  countDown(n - 1);
  Serial.print(n);
}
long factorial(int n) { return n <= 1 ? 1 : n * factorial(n - 1); }
void setup() {
  Serial.begin(115200);
  Serial.println(fibonacci(10));  // expect: 55
  countDown(3);
  Serial.println();               // expect: 321123
  Serial.println(factorial(10));  // expect: 3628800
}
void loop() {}
