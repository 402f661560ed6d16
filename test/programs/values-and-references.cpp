// A parameter is a copy; with & it is the caller's own variable; an array is never copied.
void noChange(int a) { a = 99; }
void change(int &a) { a = 99; }
void changeFirst(int list[]) { list[0] = 99; }
void changeBy(int *p) { *p += 1; }
void swapped(int &a, int &b) { int t = a; a = b; b = t; }
void setup() {
  Serial.begin(115200);
  int x = 1;
  noChange(x);
  Serial.println(x);          // expect: 1
  change(x);
  Serial.println(x);          // expect: 99
  changeBy(&x);
  Serial.println(x);          // expect: 100
  int list[2] = {1, 2};
  changeFirst(list);
  Serial.println(list[0]);    // expect: 99
  swapped(list[0], list[1]);
  Serial.println(list[1]);    // expect: 99
  int &name = x;
  name = 7;
  Serial.println(x);          // expect: 7
}
void loop() {}
