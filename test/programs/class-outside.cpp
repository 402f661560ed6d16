// Methods may stand outside their class; fields may begin with a value.
class Blinker {
  public:
    Blinker(byte p);
    void toggle();
    byte pin;
    bool on = false;
    int changes = 7;
};
Blinker::Blinker(byte p) { pin = p; }
void Blinker::toggle() {
  on = !on;
  this->changes++;
}
Blinker many[] = {Blinker(3), Blinker(5)};
void setup() {
  Serial.begin(115200);
  many[1].toggle();
  Serial.println(many[1].on);         // expect: 1
  Serial.println(many[0].on);         // expect: 0
  Serial.println(many[1].changes);    // expect: 8
  Serial.println(many[0].pin + many[1].pin);  // expect: 8
}
void loop() {}
