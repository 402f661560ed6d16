// A number that begins with 0 is octal.
void setup() {
  Serial.begin(115200);
  Serial.println(010);        // expect: 8
  Serial.println(0x10);       // expect: 16
  Serial.println(0b101);      // expect: 5
  Serial.println(B00000101);  // expect: 5
  Serial.println(100);        // expect: 100
}
void loop() {}
