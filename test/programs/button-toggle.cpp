// Each press changes the light; a pause lets the contact come to rest.
// run 1500 ms
// inputs [{"ms":200,"pin":"D2","level":"low"},{"ms":203,"pin":"D2","level":"high"},{"ms":206,"pin":"D2","level":"low"},{"ms":500,"pin":"D2","level":"high"},{"ms":900,"pin":"D2","level":"low"}]
// expect pins: D9 high 200, D9 low 900
int before = HIGH;
bool on = false;
void setup() {
  pinMode(2, INPUT_PULLUP);
  pinMode(9, OUTPUT);
}
void loop() {
  int now = digitalRead(2);
  if (before == HIGH && now == LOW) {
    on = !on;
    digitalWrite(9, on);
    delay(50);
  }
  before = now;
}
