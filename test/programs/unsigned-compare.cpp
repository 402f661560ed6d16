// Comparing int with unsigned makes both unsigned: -1 is then the largest number.
void setup() {
  Serial.begin(115200);
  int a = -1;
  unsigned int b = 1;
  Serial.println(a < b);      // expect: 0
  long c = -1;
  Serial.println(c < b);      // expect: 1
  unsigned long d = 1;
  Serial.println(c < d);      // expect: 0
  byte e = 1;
  Serial.println(a < e);      // expect: 1
}
void loop() {}
