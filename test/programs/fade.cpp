// Brightness in steps; 0 and 255 are levels.
// run 330 ms
// expect pwm: D9 0 0, D9 85 100, D9 170 200, D9 255 300
// expect pins: D9 high 300
void setup() {}
void loop() {
  for (int v = 0; v <= 255; v += 85) {
    analogWrite(9, v);
    delay(100);
  }
}
