// run 900 ms
// inputs [{"ms":0,"pin":"A3","value":0},{"ms":200,"pin":"A3","value":300},{"ms":400,"pin":"A3","value":700},{"ms":600,"pin":"A3","value":1023}]
const int count = 5;
const int first = 3;
int smooth = 0;
void setup() { for (int i = 0; i < count; i++) pinMode(first + i, OUTPUT); }
void loop() {
  smooth += (analogRead(A3) - smooth) / 4;
  int lit = map(constrain(smooth, 50, 950), 50, 950, 0, count);
  for (int i = 0; i < count; i++) digitalWrite(first + i, i < lit);
  delay(20);
}
