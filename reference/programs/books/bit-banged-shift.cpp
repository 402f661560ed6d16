// run 400 ms
const int dataPin = 11, clockPin = 12, latchPin = 8;
void sendByte(uint8_t value) {
  for (int8_t bit = 7; bit >= 0; --bit) {
    digitalWrite(dataPin, (value >> bit) & 1 ? HIGH : LOW);
    digitalWrite(clockPin, HIGH);
    delayMicroseconds(10);
    digitalWrite(clockPin, LOW);
    delayMicroseconds(10);
  }
}
void setup() {
  pinMode(dataPin, OUTPUT);
  pinMode(clockPin, OUTPUT);
  pinMode(latchPin, OUTPUT);
}
void loop() {
  static uint8_t pattern = 0x81;
  digitalWrite(latchPin, LOW);
  sendByte(pattern);
  sendByte(~pattern);
  digitalWrite(latchPin, HIGH);
  pattern = pattern << 1 | pattern >> 7;
  delay(50);
}
