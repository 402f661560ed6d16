// double is no more exact than float on this chip: 0.1 added ten times is not 1 (avr-gcc, double has 32 bits).
void setup() {
  Serial.begin(115200);
  double sum = 0;
  for (int i = 0; i < 10; i++) sum += 0.1;
  Serial.println(sum == 1.0);   // expect: 0
  Serial.println(sum, 7);       // expect: 1.0000001
  Serial.println(sizeof(double));  // expect: 4
  float tenth = 0.1;
  Serial.println(tenth == 0.1);    // expect: 1
}
void loop() {}
