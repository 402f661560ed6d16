// The light goes on and off every half second.
// run 2200 ms
// expect pins: D13 high 0, D13 low 500, D13 high 1000, D13 low 1500, D13 high 2000
// expect modes: D13 output 0
void setup() { pinMode(LED_BUILTIN, OUTPUT); }
void loop() {
  digitalWrite(LED_BUILTIN, HIGH);
  delay(500);
  digitalWrite(LED_BUILTIN, LOW);
  delay(500);
}
