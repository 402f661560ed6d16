// run 2500 ms
class Blinker {
  private:
    int _pin;
    long _on, _off;
    int _state;
    unsigned long _before;
  public:
    Blinker(int pin, long on, long off) {
      _pin = pin;
      pinMode(_pin, OUTPUT);
      _on = on;
      _off = off;
      _state = LOW;
      _before = 0;
    }
    void update(unsigned long now) {
      if ((_state == HIGH) && (now - _before >= (unsigned long)_on)) {
        _state = LOW;
        _before = now;
        digitalWrite(_pin, _state);
      } else if ((_state == LOW) && (now - _before >= (unsigned long)_off)) {
        _state = HIGH;
        _before = now;
        digitalWrite(_pin, _state);
      }
    }
    bool isOn() const { return _state == HIGH; }
};
Blinker a(12, 100, 400), b(13, 350, 350);
void setup() {}
void loop() {
  unsigned long now = millis();
  a.update(now);
  b.update(now);
}
