// run 4000 ms
// inputs [{"ms":0,"pin":"D7","level":"low"},{"ms":600,"pin":"D7","level":"high"},{"ms":700,"pin":"D7","level":"low"},{"ms":2500,"pin":"D7","level":"high"},{"ms":2600,"pin":"D7","level":"low"}]
enum class State : uint8_t { Idle, Opening, Open, Closing };
State state = State::Idle;
unsigned long entered = 0;
const char *nameOf(State s) {
  switch (s) {
    case State::Idle: return "idle";
    case State::Opening: return "opening";
    case State::Open: return "open";
    case State::Closing: return "closing";
  }
  return "?";
}
void enter(State next) {
  Serial.print(nameOf(state));
  Serial.print(" -> ");
  Serial.println(nameOf(next));
  state = next;
  entered = millis();
}
bool pressed() {
  static bool before = false;
  bool now = digitalRead(7) == HIGH;
  bool edge = now && !before;
  before = now;
  return edge;
}
void setup() {
  Serial.begin(115200);
  pinMode(7, INPUT);
  pinMode(13, OUTPUT);
}
void loop() {
  const unsigned long spent = millis() - entered;
  const bool p = pressed();
  switch (state) {
    case State::Idle:
      if (p) enter(State::Opening);
      break;
    case State::Opening:
      digitalWrite(13, (spent / 100) % 2 ? HIGH : LOW);
      if (spent >= 1000) enter(State::Open);
      break;
    case State::Open:
      digitalWrite(13, HIGH);
      if (p) enter(State::Closing);
      break;
    case State::Closing:
      if (spent >= 500) {
        digitalWrite(13, LOW);
        enter(State::Idle);
      }
      break;
  }
}
