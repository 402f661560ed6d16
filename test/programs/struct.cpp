// A struct is copied as a whole; fields of a copy are its own.
struct Lamp {
  int pin;
  bool on;
  long since;
};
Lamp lamps[2] = {{9, false, 0}, {10, true, 70000}};
Lamp brighter(Lamp l) {
  l.pin += 100;
  return l;
}
void setup() {
  Serial.begin(115200);
  Lamp a = lamps[1];
  a.pin = 3;
  Serial.println(lamps[1].pin);       // expect: 10
  Serial.println(a.since);            // expect: 70000
  Lamp b = brighter(a);
  Serial.println(a.pin);              // expect: 3
  Serial.println(b.pin);              // expect: 103
  Lamp *p = &lamps[0];
  p->on = true;
  Serial.println(lamps[0].on);        // expect: 1
  lamps[0] = b;
  Serial.println(lamps[0].pin);       // expect: 103
  Serial.println(brighter(lamps[0]).pin);  // expect: 203
}
void loop() {}
