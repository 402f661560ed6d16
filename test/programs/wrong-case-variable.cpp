// Capitals count.
const int ledPin = 13;
void setup() {
  pinMode(ledpin, OUTPUT);    // expect problem: program.unknownName name=ledpin near=ledPin
}
void loop() {}
