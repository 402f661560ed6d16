// Whole numbers are divided towards zero, and the remainder has the sign of the dividend (C++11, section 5.6).
void setup() {
  Serial.begin(115200);
  int a = -7, b = 2;
  Serial.println(a / b);      // expect: -3
  Serial.println(a % b);      // expect: -1
  Serial.println(7 / -2);     // expect: -3
  Serial.println(7 % -2);     // expect: 1
  Serial.println(1 / 2);      // expect: 0
}
void loop() {}
