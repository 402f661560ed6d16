// 1 < x < 3 compares the truth value of the first comparison with 3.
void setup() {
  Serial.begin(115200);
  int x = 50;
  Serial.println(1 < x < 3);            // expect: 1
  Serial.println(1 < x && x < 3);       // expect: 0
  int a = 5, b = 5, c = 5;
  Serial.println(a == b == c);          // expect: 0
}
void loop() {}
