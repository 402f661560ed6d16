// 60 * 1000 is computed in int: the wait is not a minute.
void setup() {
  Serial.begin(115200);
  long wait = 60 * 1000;      // expect problem: program.overflow
  Serial.println(wait);       // expect: -5536
  long good = 60L * 1000;
  Serial.println(good);       // expect: 60000
  unsigned long also = 60UL * 1000;
  Serial.println(also);       // expect: 60000
}
void loop() {}
