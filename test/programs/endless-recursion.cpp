// A function that calls itself without end needs more stack than the chip has.
int depth(int n) {
  return depth(n + 1) + 1;    // expect broken: program.stackOverflow
}
void setup() {
  Serial.println(depth(0));
}
void loop() {}
