// A quarter of the analog value fits analogWrite.
// run 1000 ms
// inputs [{"ms":0,"pin":"A0","value":512},{"ms":500,"pin":"A0","value":1023}]
// expect pwm: D9 128 0, D9 255 500
// expect pins: D9 high 500
void setup() {}
void loop() {
  int v = analogRead(A0);
  analogWrite(9, v / 4);
  delay(100);
}
