// A pointer moves by whole elements.
int list[] = {10, 20, 30, 40};
void setup() {
  Serial.begin(115200);
  int *p = list;
  Serial.println(*p);                 // expect: 10
  p += 2;
  Serial.println(*p);                 // expect: 30
  Serial.println(*(p - 1));           // expect: 20
  Serial.println(p - list);           // expect: 2
  Serial.println(*p++ + 1);           // expect: 31
  Serial.println(*p);                 // expect: 40
  Serial.println(p == &list[3]);      // expect: 1
  (*p)++;
  Serial.println(list[3]);            // expect: 41
  const char *text = "hello";
  Serial.println(text + 2);           // expect: llo
  Serial.println(text[1]);            // expect: e
  int *none = nullptr;
  if (!none) Serial.println("none");  // expect: none
}
void loop() {}
