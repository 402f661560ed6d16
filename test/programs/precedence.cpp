// * before +, shifts after +, comparisons before &, && before || (C++11, annex A.4).
void setup() {
  Serial.begin(115200);
  Serial.println(2 + 3 * 4);            // expect: 14
  Serial.println(1 << 2 + 1);           // expect: 8
  Serial.println((6 & 3) == 2);         // expect: 1
  Serial.println(6 & 3 == 2);           // expect: 0
  Serial.println(1 || 0 && 0);          // expect: 1
  Serial.println(!1 == 0);              // expect: 1
  Serial.println(-2 * -3 - -4);         // expect: 10
  Serial.println(10 - 4 - 3);           // expect: 3
  Serial.println(100 / 10 / 5);         // expect: 2
  Serial.println(7 & 5 | 8 ^ 2);        // expect: 15
}
void loop() {}
