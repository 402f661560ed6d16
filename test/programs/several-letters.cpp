// Single quotes hold one character; two of them are a number.
void setup() {
  Serial.begin(115200);
  Serial.println('ab');       // expect: 24930
}
// expect problem at 4: program.manyCharacters
void loop() {}
