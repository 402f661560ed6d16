// Time is asked instead of waited for.
// run 3500 ms
// expect pins: D9 high 1000, D9 low 2000, D9 high 3000
const int led = 9;
unsigned long before = 0;
bool on = false;
void setup() { pinMode(led, OUTPUT); }
void loop() {
  unsigned long now = millis();
  if (now - before >= 1000) {
    before = now;
    on = !on;
    digitalWrite(led, on);
  }
}
