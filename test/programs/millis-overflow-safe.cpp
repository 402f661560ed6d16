// The difference of two times is right even when the counter has wrapped in between (arithmetic modulo 2^32).
void setup() {
  Serial.begin(115200);
  unsigned long before = 4294967290UL;
  unsigned long now = 4;
  Serial.println(now - before);             // expect: 10
  Serial.println(now - before >= 10);       // expect: 1
  Serial.println(now >= before + 10);       // expect: 1
  unsigned int shortBefore = 65530;
  unsigned int shortNow = 4;
  Serial.println(shortNow - shortBefore);   // expect: 10
}
void loop() {}
