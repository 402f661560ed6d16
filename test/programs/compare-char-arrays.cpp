// A String compares letters, a char array addresses.
char a[] = "on";
String s = "on";
void setup() {
  Serial.begin(115200);
  Serial.println(s == a);     // expect: 1
  Serial.println(a == "on");  // expect: 0
  Serial.println(s == "on");  // expect: 1
  Serial.println(String(a) == "on");  // expect: 1
}
void loop() {}
