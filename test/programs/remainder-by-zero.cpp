// So is the remainder.
void setup() {
  long x = 5;
  long y = 0;
  x %= y;                     // expect broken: program.divisionByZero
}
void loop() {}
