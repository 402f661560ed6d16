// A String grows with +; a number becomes its digits, a char a letter.
void setup() {
  Serial.begin(115200);
  String s = "t=";
  s += 25;
  s += 'C';
  Serial.println(s);                    // expect: t=25C
  Serial.println(String("a") + 1 + 2);  // expect: a12
  Serial.println(1 + 2 + String("a"));  // expect: 3a
  Serial.println(String(3.14159, 3));   // expect: 3.142
  Serial.println(String(255, HEX));     // expect: ff
  Serial.println(String("x") + 1.5);    // expect: x1.50
  Serial.println(s.length());           // expect: 5
  byte b = 65;
  Serial.println(String("b") + b);      // expect: b65
}
void loop() {}
