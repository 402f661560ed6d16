// A pin without PWM is high from 128 on.
// run 100 ms
// expect pwm: D8 127 0, D8 128 50
// expect pins: D8 high 50
void setup() {
  analogWrite(8, 127);
  delay(50);
  analogWrite(8, 128);
}
void loop() {}
