// run 1700 ms
byte n = 0;
void setup() { for (int p = 4; p <= 7; p++) pinMode(p, OUTPUT); }
void loop() {
  for (int i = 0; i < 4; i++) digitalWrite(4 + i, n & (1 << i) ? HIGH : LOW);
  n++;
  if (n > 15) n = 0;
  delay(100);
}
