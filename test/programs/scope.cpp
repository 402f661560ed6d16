// An inner variable hides the outer one; a static one keeps its value.
int x = 1;
int counted() {
  static int n = 10;
  n++;
  return n;
}
void setup() {
  Serial.begin(115200);
  int x = 2;
  {
    int x = 3;
    Serial.println(x);        // expect: 3
  }
  Serial.println(x);          // expect: 2
  for (int x = 7; x < 8; x++) Serial.println(x);  // expect: 7
  Serial.println(x);          // expect: 2
  counted();
  counted();
  Serial.println(counted());  // expect: 13
}
void loop() {}
