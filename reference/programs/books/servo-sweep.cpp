// run 1200 ms
#include <Servo.h>
Servo gate;
int angle = 0, by = 60;
void setup() { gate.attach(5); }
void loop() {
  gate.write(angle);
  angle += by;
  if (angle >= 180 || angle <= 0) by = -by;
  delay(150);
}
