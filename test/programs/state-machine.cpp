// A traffic light by states and time.
// run 5000 ms
// expect pins: D9 high 0, D10 high 2000, D9 low 2500, D10 low 2500, D11 high 2500, D10 high 4500, D11 low 4500
enum State { RED, RED_YELLOW, GREEN, YELLOW };
State state = RED;
unsigned long since = 0;
const int durations[] = {2000, 500, 2000, 500};
void show() {
  digitalWrite(9, state == RED || state == RED_YELLOW);
  digitalWrite(10, state == RED_YELLOW || state == YELLOW);
  digitalWrite(11, state == GREEN);
}
void setup() {
  for (int p = 9; p <= 11; p++) pinMode(p, OUTPUT);
  show();
}
void loop() {
  if (millis() - since >= durations[state]) {
    since = millis();
    state = (State)((state + 1) % 4);
    show();
  }
}
