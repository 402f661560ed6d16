// run 300 ms
int calls = 0;
int f(int v) { calls++; return v; }
void setup() {
  Serial.begin(115200);
  int a = 5, b = 3, c;
  c = a++ + ++b;
  Serial.println(c); Serial.println(a); Serial.println(b);
  Serial.println(a > b ? a < 10 ? 1 : 2 : 3);
  c = (a = 4, b = 2, a * b);
  Serial.println(c);
  Serial.println(f(0) && f(1) || f(2));
  Serial.println(calls);
  a <<= 3; b |= 8; c ^= 0x55; c &= ~1; a %= 7; b -= a; c >>= 1;
  Serial.println(a); Serial.println(b); Serial.println(c);
  byte x = 200, y = 100;
  Serial.println(x + y);
  Serial.println((byte)(x + y));
  Serial.println(x * y);
  unsigned int big = 50000;
  Serial.println(big * 2);
  Serial.println(big * 2L);
  Serial.println(-7 >> 1);
  Serial.println((unsigned)-7 >> 1);
  Serial.println(~0u);
  Serial.println(!a == 0);
  Serial.println(1 == 1 != 0);
  Serial.println(7 & 3 == 3);
  Serial.println(10 - 4 - 3);
  Serial.println(2 + 3 > 4 && 6 / 4 == 1);
  int *p = &a;
  (*p)++;
  Serial.println(a);
  Serial.println(*p * 2);
  int arr[4] = {10, 20, 30, 40};
  p = arr;
  Serial.println(*p++); Serial.println(*++p); Serial.println(p - arr); Serial.println(p[-1]);
  Serial.println(sizeof(arr) / sizeof(*arr));
  const char *s = "abc";
  Serial.println(*(s + 1)); Serial.println(s[2]); Serial.println(s + 1);
  Serial.println('a' < 'b'); Serial.println('z' - 'a');
  float q = 7;
  q /= 2;
  Serial.println(q); Serial.println((int)q); Serial.println((int)-q); Serial.println(7 / 2 * 2.0);
  q++;
  Serial.println(q);
  long big2 = 1L << 20;
  Serial.println(big2);
  Serial.println(1 << 15);
  signed char sc = 0x80;
  Serial.println(sc);
  bool t = 5;
  Serial.println(t + t);
  Serial.println(static_cast<long>(40000u) * 2);
  Serial.println(int(2.9) + long('1'));
}
void loop() {}
