// What kind of letter a character is.
void setup() {
  Serial.begin(115200);
  Serial.println(isDigit('7') ? "digit" : "no");     // expect: digit
  Serial.println(isAlpha('7') ? "letter" : "no");    // expect: no
  Serial.println((char)toupper('x'));                // expect: X
  Serial.println(isSpace('\t') ? "space" : "no");    // expect: space
  Serial.println((char)tolower('X'));                // expect: x
}
void loop() {}
