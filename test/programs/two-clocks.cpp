// Two lights at two speeds in one loop.
// run 1100 ms
// expect pins: D8 high 300, D9 high 500, D8 low 600, D8 high 900, D9 low 1000
unsigned long a = 0, b = 0;
void setup() {
  pinMode(8, OUTPUT);
  pinMode(9, OUTPUT);
}
void loop() {
  if (millis() - a >= 300) {
    a += 300;
    digitalWrite(8, !digitalRead(8));
  }
  if (millis() - b >= 500) {
    b += 500;
    digitalWrite(9, !digitalRead(9));
  }
}
