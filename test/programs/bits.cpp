// The board's functions for bits.
void setup() {
  Serial.begin(115200);
  byte b = 0;
  bitSet(b, 3);
  bitSet(b, 0);
  Serial.println(b);                  // expect: 9
  bitClear(b, 0);
  Serial.println(b);                  // expect: 8
  bitWrite(b, 7, 1);
  Serial.println(b);                  // expect: 136
  Serial.println(bitRead(b, 3));      // expect: 1
  Serial.println(bit(10));            // expect: 1024
  Serial.println(highByte(0x1234), HEX);  // expect: 12
  Serial.println(lowByte(0x1234), HEX);   // expect: 34
  Serial.println(word(0x12, 0x34), HEX);  // expect: 1234
  b ^= 0xFF;
  Serial.println(b);                  // expect: 119
  b |= 1 << 7;
  b &= ~(1 << 0);
  Serial.println(b);                  // expect: 246
}
void loop() {}
