// A static local is made once, when its line is first reached.
int made = 0;
struct Thing {
  int id;
  Thing() { made++; id = made * 10; }
};
int use() {
  static Thing t;
  t.id++;
  return t.id;
}
void setup() {
  Serial.begin(115200);
  Serial.println(made);       // expect: 0
  use();
  Serial.println(use());      // expect: 12
  Serial.println(made);       // expect: 1
}
void loop() {}
