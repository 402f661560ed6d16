// A tone ends by itself, by the next tone, or by noTone.
// run 1000 ms
// expect tones: D8 440 0-100, D8 262 200-400, D8 523 400-500
void setup() {
  tone(8, 440, 100);
  delay(200);
  tone(8, 262);
  delay(200);
  tone(8, 523, 500);
  delay(100);
  noTone(8);
}
void loop() {}
