// A servo that is detached gets no pulses.
// run 600 ms
// expect servos: D5 45 0, D5 off 300
#include <Servo.h>
Servo arm;
void setup() {
  Serial.begin(115200);
  arm.attach(5);
  arm.write(45);
  Serial.println(arm.read());       // expect: 45
  Serial.println(arm.attached());   // expect: 1
  delay(300);
  arm.detach();
  Serial.println(arm.attached());   // expect: 0
}
void loop() {}
