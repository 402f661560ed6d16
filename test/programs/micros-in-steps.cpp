// micros() counts in steps of 4 (16 MHz divided by 64).
void setup() {
  Serial.begin(115200);
  bool byFour = true;
  for (int i = 0; i < 50; i++)
    if (micros() % 4 != 0) byFour = false;
  Serial.println(byFour);           // expect: 1
  unsigned long a = micros();
  delayMicroseconds(1000);
  unsigned long b = micros() - a;
  Serial.println(b >= 996 && b <= 1060);  // expect: 1
  a = millis();
  delay(250);
  b = millis() - a;
  Serial.println(b >= 249 && b <= 251);   // expect: 1
}
void loop() {}
