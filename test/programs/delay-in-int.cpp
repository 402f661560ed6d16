// A minute does not fit into the int that 60 * 1000 is: the wait is 4294961760 ms, seven weeks.
// run 70000 ms
// expect pins: D9 high 0
void setup() {
  pinMode(9, OUTPUT);
  digitalWrite(9, HIGH);
  delay(60 * 1000);           // expect problem: program.overflow
  digitalWrite(9, LOW);
}
void loop() {}
