// run 500 ms
#define SQUARE(x) ((x) * (x))
#define IS_LEAP(y) (((y) % 4 == 0 && (y) % 100 != 0) || (y) % 400 == 0)
constexpr int limit = 50;
const unsigned int ANSWER = 0x2A;
long power(int base, byte exponent) {
  long result = 1;
  while (exponent) {
    if (exponent & 1) result *= base;
    base *= base;
    exponent >>= 1;
  }
  return result;
}
bool isPrime(unsigned n) {
  if (n < 2) return false;
  for (unsigned d = 2; d * d <= n; d++)
    if (n % d == 0) return false;
  return true;
}
void setup() {
  Serial.begin(115200);
  for (int n = 0; n < limit; n++)
    if (isPrime(n)) { Serial.print(n); Serial.write(' '); }
  Serial.println();
  Serial.println(SQUARE(3 + 1));
  Serial.println(IS_LEAP(2024) ? "leap" : "common");
  Serial.println(power(3, 9));
  Serial.println(ANSWER, BIN);
  Serial.println(ANSWER, OCT);
  int x = 7, y = 3;
  x ^= y; y ^= x; x ^= y;
  Serial.print(x); Serial.print(','); Serial.println(y);
  Serial.println(-17 / 5); Serial.println(-17 % 5);
  Serial.println(1 + 2 * 3 - 4 / 2 % 3 << 1);
  Serial.println(5 & 3 | 4 ^ 1);
  Serial.println(!0 + !5);
  Serial.println(~0x0F & 0xFF, HEX);
  int digits = 0;
  for (long n = 987654321; n > 0; n /= 10) digits += n % 10;
  Serial.println(digits);
  byte r = 0b10110001, m = 0;
  for (byte i = 0; i < 8; i++) bitWrite(m, 7 - i, bitRead(r, i));
  Serial.println(m, BIN);
  Serial.println(highByte(0x1234), HEX);
  Serial.println(lowByte(0x1234), HEX);
  Serial.println(word(0x12, 0x34), HEX);
  float f = 10 / 4;
  Serial.println(f);
  f = 10 / 4.0;
  Serial.println(f);
  Serial.println((int)3.99);
  Serial.println(round(2.5));
  Serial.println(sqrt(2), 6);
  Serial.println(pow(2, 10));
  Serial.println(32767 + 1);
  Serial.println(40000u + 30000u);
  Serial.println(1000L * 1000);
  Serial.println('a' + 1);
  Serial.println((char)('a' + 1));
}
void loop() {}
