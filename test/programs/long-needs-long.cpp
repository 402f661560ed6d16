// The right side is computed before the left side is looked at: int times int stays int.
void setup() {
  Serial.begin(115200);
  int seconds = 90;
  long a = seconds * 1000;
  Serial.println(a);          // expect: 24464
  long b = seconds * 1000L;
  Serial.println(b);          // expect: 90000
  long c = (long)seconds * 1000;
  Serial.println(c);          // expect: 90000
}
void loop() {}
