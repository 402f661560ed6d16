// ?: chooses a value; a comma does one thing after the other.
void setup() {
  Serial.begin(115200);
  int x = 7;
  Serial.println(x > 5 ? "large" : "small");   // expect: large
  Serial.println(x % 2 ? 1 : 2.5);             // expect: 1.00
  int y = (x++, x * 2);
  Serial.println(y);                           // expect: 16
  byte b = x > 100 ? 1 : x > 5 ? 2 : 3;
  Serial.println(b);                           // expect: 2
}
void loop() {}
