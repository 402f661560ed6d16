// A String handed over without & is a copy.
void noChange(String s) { s += "!"; }
void change(String &s) { s += "!"; }
String made(int n) {
  String s = "n";
  for (int i = 0; i < n; i++) s += i;
  return s;
}
void setup() {
  Serial.begin(115200);
  String s = "hi";
  noChange(s);
  Serial.println(s);          // expect: hi
  change(s);
  Serial.println(s);          // expect: hi!
  Serial.println(made(4));    // expect: n0123
  String list[3] = {"a", "b"};
  Serial.println(list[1] + list[2] + "c");  // expect: bc
}
void loop() {}
