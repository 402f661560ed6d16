// run 3200 ms
const byte segments[7] = {2, 3, 4, 5, 6, 7, 8};
const byte digits[10] PROGMEM = {
  0b0111111, 0b0000110, 0b1011011, 0b1001111, 0b1100110,
  0b1101101, 0b1111101, 0b0000111, 0b1111111, 0b1101111
};
void showDigit(byte d) {
  byte pattern = pgm_read_byte(&digits[d]);
  for (byte i = 0; i < 7; i++)
    digitalWrite(segments[i], bitRead(pattern, i));
}
void setup() {
  for (byte pin : segments) pinMode(pin, OUTPUT);
}
void loop() {
  static byte n = 9;
  showDigit(n);
  if (n-- == 0) n = 9;
  delay(300);
}
