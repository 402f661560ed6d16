#include "Stepper.h"

// Which wires are on in each of the four phases, the first wire in the lowest bit.
static const uint8_t fourWires[] = {0x5, 0x6, 0xa, 0x9};
static const uint8_t twoWires[] = {0x2, 0x3, 0x1, 0x0};

Stepper::Stepper(int n, int a, int b) : steps(n), at(0), wires(2), pins{a, b, 0, 0}, pause(0), last(0) {
  for (int i = 0; i < wires; i++) pinMode(pins[i], OUTPUT);
}
Stepper::Stepper(int n, int a, int b, int c, int d) : steps(n), at(0), wires(4), pins{a, b, c, d}, pause(0), last(0) {
  for (int i = 0; i < wires; i++) pinMode(pins[i], OUTPUT);
}
void Stepper::setSpeed(long turnsAMinute) { pause = 60000000L / steps / turnsAMinute; }
void Stepper::step(int count) {
  int left = abs(count);
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
void Stepper::show(int phase) {
  uint8_t on = wires == 4 ? fourWires[phase] : twoWires[phase];
  for (int i = 0; i < wires; i++) digitalWrite(pins[i], on >> i & 1);
}
