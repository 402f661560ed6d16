// Work without end is broken off.
// run 600000 ms
volatile long n = 0;
void setup() {}
void loop() {
  while (n >= 0) n = (n + 7) % 1000;   // expect broken: program.hangs
}
