// print shows two decimals unless told otherwise; floats have about seven digits.
void setup() {
  Serial.begin(115200);
  float pi = 3.14159265;
  Serial.println(pi);         // expect: 3.14
  Serial.println(pi, 4);      // expect: 3.1416
  Serial.println(pi, 0);      // expect: 3
  Serial.println(2.5, 0);     // expect: 3
  Serial.println(-1.005);     // expect: -1.00
  Serial.println(0.1 + 0.2, 7);   // expect: 0.3000000
  Serial.println(16777217.0, 1);  // expect: 16777216.0
  Serial.println(1e10);       // expect: ovf
  Serial.println(-0.5, 1);    // expect: -0.5
  Serial.println(1.0 / 3, 6); // expect: 0.333333
}
void loop() {}
