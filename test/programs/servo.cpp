// An angle that is written before the first pulse is the first the servo sees.
// run 1500 ms
// expect servos: D9 0 0, D9 90 500, D9 180 1000
#include <Servo.h>
Servo arm;
void setup() {
  arm.attach(9);
  arm.write(0);
}
void loop() {
  delay(500);
  arm.write(90);
  delay(500);
  arm.write(200);
  while (true) {}
}
