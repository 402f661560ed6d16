// run 3000 ms
struct Lamp {
  byte pin;
  unsigned int every;
  unsigned long last;
  bool on;
};
Lamp lamps[] = {{9, 250, 0, false}, {10, 430, 0, true}, {11, 1010, 0, false}};
void setup() {
  for (auto &l : lamps) {
    pinMode(l.pin, OUTPUT);
    digitalWrite(l.pin, l.on);
  }
}
void loop() {
  for (unsigned i = 0; i < sizeof(lamps) / sizeof(Lamp); i++) {
    Lamp *l = &lamps[i];
    if (millis() - l->last >= l->every) {
      l->last = millis();
      l->on = !l->on;
      digitalWrite(l->pin, l->on ? HIGH : LOW);
    }
  }
}
