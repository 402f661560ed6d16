// The place of an assigned record is found once, its index counts once.
struct Entry { int a; byte b; };
Entry list[3];
byte n = 0;
void setup() {
  Serial.begin(115200);
  Entry one = {7, 8};
  list[n++] = one;
  list[n++] = {9, 10};
  Serial.println(n);           // expect: 2
  Serial.println(list[1].a);   // expect: 9
}
void loop() {}
