// print in other bases; a negative int is shown with its 32 bits.
void setup() {
  Serial.begin(115200);
  Serial.println(255, HEX);   // expect: FF
  Serial.println(255, BIN);   // expect: 11111111
  Serial.println(8, OCT);     // expect: 10
  Serial.println(-1, HEX);    // expect: FFFFFFFF
  Serial.println(-5, DEC);    // expect: -5
  byte b = 5;
  Serial.println(b, BIN);     // expect: 101
}
void loop() {}
