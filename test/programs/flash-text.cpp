// F() keeps a text in flash; it prints like any other.
void setup() {
  Serial.begin(115200);
  Serial.print(F("from "));
  Serial.println(F("flash"));         // expect: from flash
  String s = F("abc");
  Serial.println(s + F("def"));       // expect: abcdef
}
void loop() {}
