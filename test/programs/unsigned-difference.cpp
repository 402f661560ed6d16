// A difference of unsigned numbers never is negative.
void setup() {
  Serial.begin(115200);
  unsigned int a = 3, b = 5;
  Serial.println(a - b);      // expect: 65534
  unsigned long c = 3, d = 5;
  Serial.println(c - d);      // expect: 4294967294
  Serial.println(a - b < 0);  // expect: 0
  byte e = 3, f = 5;
  Serial.println(e - f);      // expect: -2
}
void loop() {}
