// The reference board's stepper: two or four wires, one step after the other, each waited for.
#pragma once
#include "board.h"

class Stepper {
 public:
  Stepper(int steps, int a, int b);
  Stepper(int steps, int a, int b, int c, int d);
  void setSpeed(long turnsAMinute);
  void step(int count);

 private:
  int steps, at, wires;
  int pins[4];
  unsigned long pause, last;
  void show(int phase);
};
