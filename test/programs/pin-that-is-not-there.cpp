// Pins that the board does not have are passed over.
// run 50 ms
// expect pins: none
void setup() {
  pinMode(42, OUTPUT);
  digitalWrite(42, HIGH);
}
void loop() {}
