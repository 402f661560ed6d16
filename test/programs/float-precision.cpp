// A float cannot hold every long.
void setup() {
  Serial.begin(115200);
  long a = 123456789L;
  float f = a;
  Serial.println((long)f);    // expect: 123456792
  float big = 100000;
  big += 0.001;
  Serial.println(big, 3);     // expect: 100000.000
}
void loop() {}
