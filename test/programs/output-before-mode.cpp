// HIGH before pinMode switches the pull-up on and is high as soon as the pin is an output (data sheet, table 14-1).
// run 100 ms
// expect modes: D9 pull-up 0, D9 output 10
// expect pins: D9 high 10
void setup() {
  digitalWrite(9, HIGH);
  delay(10);
  pinMode(9, OUTPUT);
}
void loop() {}
