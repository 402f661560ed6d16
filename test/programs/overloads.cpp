// The form that fits best is called; a char is nearer to int than to long.
const char *kind(int n) { return "int"; }
const char *kind(long n) { return "long"; }
const char *kind(double n) { return "double"; }
const char *kind(char n) { return "char"; }
const char *kind(const char *n) { return "text"; }
void setup() {
  Serial.begin(115200);
  byte b = 1;
  float f = 1;
  Serial.println(kind(1));          // expect: int
  Serial.println(kind(100000));     // expect: long
  Serial.println(kind(1.5));        // expect: double
  Serial.println(kind('a'));        // expect: char
  Serial.println(kind("a"));        // expect: text
  Serial.println(kind(b));          // expect: int
  Serial.println(kind(f));          // expect: double
  Serial.println(kind('a' + 'b'));  // expect: int
}
void loop() {}
