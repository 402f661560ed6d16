// More than 63 characters do not wait for the program.
// run 2000 ms
// inputs [{"ms":10,"text":"0123456789012345678901234567890123456789012345678901234567890123456789"}]
void setup() {
  Serial.begin(115200);
  delay(500);
  Serial.println(Serial.available());   // expect: 63
}
void loop() {}
