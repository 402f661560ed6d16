// run 600 ms
unsigned long factorial(byte n) { return n < 2 ? 1 : n * factorial(n - 1); }
int fib(int n) { if (n < 2) return n; return fib(n - 1) + fib(n - 2); }
int moves = 0;
void hanoi(byte n, char from, char to, char by) {
  if (n == 0) return;
  hanoi(n - 1, from, by, to);
  moves++;
  if (moves < 4) { Serial.print(from); Serial.print("->"); Serial.println(to); }
  hanoi(n - 1, by, to, from);
}
unsigned gcd(unsigned a, unsigned b) { return b ? gcd(b, a % b) : a; }
bool isEven(unsigned n);
bool isOdd(unsigned n) { return n == 0 ? false : isEven(n - 1); }
bool isEven(unsigned n) { return n == 0 ? true : isOdd(n - 1); }
void setup() {
  Serial.begin(115200);
  Serial.println(factorial(12));
  Serial.println(factorial(13));
  Serial.println(fib(15));
  hanoi(6, 'A', 'C', 'B');
  Serial.println(moves);
  Serial.println(gcd(1071, 462));
  Serial.println(isEven(30));
}
void loop() {}
