// Without pinMode the pin stays an input: HIGH only switches its pull-up on.
// run 100 ms
// expect modes: D9 pull-up 0, D9 input 50
// expect pins: none
void setup() {}
void loop() {
  digitalWrite(9, HIGH);
  delay(50);
  digitalWrite(9, LOW);
  delay(50);
}
