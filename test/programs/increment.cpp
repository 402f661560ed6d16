// x++ gives the old value, ++x the new one.
void setup() {
  Serial.begin(115200);
  int x = 5;
  Serial.println(x++);        // expect: 5
  Serial.println(x);          // expect: 6
  Serial.println(++x);        // expect: 7
  Serial.println(x--);        // expect: 7
  Serial.println(--x);        // expect: 5
  int y = x++ + 10;
  Serial.println(y);          // expect: 15
  int a[3] = {1, 2, 3};
  int i = 0;
  a[i++] = 9;
  Serial.println(a[0] * 10 + i);  // expect: 91
}
void loop() {}
