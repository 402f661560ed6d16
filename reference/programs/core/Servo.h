// The reference board's servo: timer 1 counts half microseconds; one servo after the other gets its pulse, every 20 ms anew.
#pragma once
#include "board.h"

class Servo {
 public:
  Servo();
  uint8_t attach(int pin, int least = 544, int most = 2400);
  void detach();
  void write(int value);
  void writeMicroseconds(int micros);
  int read();
  int readMicroseconds() { return ticks / 2; }
  bool attached() { return isOn; }
  uint8_t pin;
  volatile bool isOn;
  volatile uint16_t ticks;

 private:
  int least, most;
};
