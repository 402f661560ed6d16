// dtostrf rounds the decimal value and knows about eight digits; print adds half of the last digit in 32 bits.
char line[30];
void show(float x, byte decimals) {
  dtostrf(x, 1, decimals, line);
  Serial.println(line);
}
void setup() {
  Serial.begin(115200);
  show(0.5, 0);          // expect: 1
  show(0.05, 1);         // expect: 0.1
  show(2.5, 0);          // expect: 3
  show(9.995, 2);        // expect: 9.99
  show(123456.789, 3);   // expect: 123456.790
  show(-0.5, 0);         // expect: -1
  show(0.0004, 2);       // expect: 0.00
}
void loop() {}
