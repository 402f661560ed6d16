// run 2500 ms
#include <Stepper.h>
const int stepsPerTurn = 32;
Stepper crane(stepsPerTurn, 8, 10, 9, 11);
void setup() {
  crane.setSpeed(60);
  Serial.begin(9600);
}
void loop() {
  crane.step(16);
  Serial.println("up");
  delay(200);
  crane.step(-8);
  Serial.println("down");
  delay(200);
}
