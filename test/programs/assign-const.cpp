// A constant keeps its value.
const int pin = 13;
void setup() {
  pin = 12;                   // expect problem: program.assignToConst name=pin
}
void loop() {}
