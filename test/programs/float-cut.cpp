// A float put into an int loses its fraction; division of int has none to begin with.
void setup() {
  Serial.begin(115200);
  int a = 3.99;
  Serial.println(a);          // expect: 3
  int b = -3.99;
  Serial.println(b);          // expect: -3
  float c = 1 / 4;
  Serial.println(c);          // expect: 0.00
  float d = 1 / 4.0;
  Serial.println(d);          // expect: 0.25
  float e = 5 * (9 / 5) + 32;
  Serial.println(e);          // expect: 37.00
  int raw = 512;
  float volts = raw * 5.0 / 1023;
  Serial.println(volts);      // expect: 2.50
  Serial.println((int)(volts * 100));  // expect: 250
}
void loop() {}
