// Headers whose classes are written in the board's own language: read in where #include stands, as the compiler does.
//
// Written for this project from what textbooks say of the class: two or four wires, each step waited for, wires in the order in
// which they are named (common practice; the phases from memory). The same class in the reference board is compiled for the chip.
// Does not know: how it is read.

/** By header. All on lines of their own so that it can be read; in a program everything stands on the line of its #include. */
export const headerSource: Readonly<Record<string, string>> = {
  "Stepper.h": `
class Stepper {
 public:
  Stepper(int n, int a, int b) : steps(n), at(0), wires(2), pause(0), last(0) {
    pins[0] = a;
    pins[1] = b;
    begin();
  }
  Stepper(int n, int a, int b, int c, int d) : steps(n), at(0), wires(4), pause(0), last(0) {
    pins[0] = a;
    pins[1] = b;
    pins[2] = c;
    pins[3] = d;
    begin();
  }
  void setSpeed(long turnsAMinute) { pause = 60000000L / steps / turnsAMinute; }
  void step(int count) {
    int left = count > 0 ? count : -count;
    while (left > 0) {
      unsigned long now = micros();
      if (now - last < pause) continue;
      last = now;
      if (count > 0) at = at + 1 == steps ? 0 : at + 1;
      else at = at == 0 ? steps - 1 : at - 1;
      left--;
      show(at % 4);
    }
  }

 private:
  int steps, at, wires;
  int pins[4];
  unsigned long pause, last;
  void begin() {
    for (int i = 0; i < wires; i++) pinMode(pins[i], 1);
  }
  void show(int phase) {
    static const byte four[] = {0x5, 0x6, 0xa, 0x9};
    static const byte two[] = {0x2, 0x3, 0x1, 0x0};
    byte on = wires == 4 ? four[phase] : two[phase];
    for (int i = 0; i < wires; i++) digitalWrite(pins[i], on >> i & 1);
  }
};
`,
};
