// A char is printed as a letter, a byte as a number; 'A' + 1 is an int.
void setup() {
  Serial.begin(115200);
  char c = 'A';
  Serial.println(c);          // expect: A
  byte b = 'A';
  Serial.println(b);          // expect: 65
  Serial.println('A' + 1);    // expect: 66
  Serial.println((char)('A' + 1));  // expect: B
  Serial.println('7' - '0');  // expect: 7
  Serial.write(72);
  Serial.write("i\n");        // expect: Hi
  bool yes = true;
  Serial.println(yes);        // expect: 1
}
void loop() {}
