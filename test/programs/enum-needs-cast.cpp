// A number does not become an enum by itself.
enum State { OFF, ON };
void setup() {
  State s = 1;                // expect problem: program.cannotConvert
}
void loop() {}
