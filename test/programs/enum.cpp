// An enum counts on from the value before.
enum State { OFF, BLINKING = 5, ON };
enum class Colour : byte { RED = 1, GREEN };
State state = OFF;
void setup() {
  Serial.begin(115200);
  state = ON;
  Serial.println(state);              // expect: 6
  Serial.println(BLINKING + 1);       // expect: 6
  switch (state) {
    case OFF: Serial.println("off"); break;
    case ON: Serial.println("on"); break;     // expect: on
    default: break;
  }
  Colour c = Colour::GREEN;
  Serial.println((int)c);             // expect: 2
  Serial.println(c == Colour::RED);   // expect: 0
  Serial.println(sizeof(c));          // expect: 1
}
void loop() {}
