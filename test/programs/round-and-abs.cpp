// abs, round, min, max, constrain and map as the board has them.
void setup() {
  Serial.begin(115200);
  Serial.println(abs(-5));              // expect: 5
  Serial.println(round(2.5));           // expect: 3
  Serial.println(round(-2.5));          // expect: -3
  Serial.println(min(3, 7));            // expect: 3
  Serial.println(max(3.5, 7));          // expect: 7.00
  Serial.println(constrain(15, 0, 10)); // expect: 10
  Serial.println(map(512, 0, 1023, 0, 255));  // expect: 127
  Serial.println(map(1023, 0, 1023, 0, 255)); // expect: 255
  Serial.println(map(5, 0, 10, 100, 0));      // expect: 50
  Serial.println(sq(12));               // expect: 144
  int n = 3;
  Serial.println(max(n++, 2));          // expect: 4
  Serial.println(n);                    // expect: 5
}
void loop() {}
