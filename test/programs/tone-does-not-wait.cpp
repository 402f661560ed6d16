// tone() returns at once: without a pause only the last note is heard.
// run 500 ms
// expect tones: D8 262 0-0, D8 330 0-0, D8 392 0-200
void setup() {
  tone(8, 262, 200);
  tone(8, 330, 200);
  tone(8, 392, 200);
}
void loop() {}
