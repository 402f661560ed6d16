// A loop that only waits ends when the world changes.
// run 5000 ms
// inputs [{"ms":1234,"pin":"D3","level":"high"}]
// expect pins: D9 high 1234
void setup() {
  pinMode(3, INPUT);
  pinMode(9, OUTPUT);
  while (digitalRead(3) == LOW) {
  }
  digitalWrite(9, HIGH);
}
void loop() {}
