// A shifted byte is an int: the bits that leave the byte are still there.
void setup() {
  Serial.begin(115200);
  byte b = 0x81;
  Serial.println(b << 1);           // expect: 258
  byte c = b << 1;
  Serial.println(c);                // expect: 2
  b >>= 1;
  Serial.println(b);                // expect: 64
  byte bits = 1;
  for (int i = 0; i < 10; i++) bits <<= 1;
  Serial.println(bits);             // expect: 0
}
void loop() {}
