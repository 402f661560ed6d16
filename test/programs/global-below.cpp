// A variable, unlike a function, must stand above its use.
void setup() {
  pin = 3;                    // expect problem: program.unknownName name=pin
}
int pin;
void loop() {}
