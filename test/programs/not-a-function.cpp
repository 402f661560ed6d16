// A variable cannot be called.
int led = 13;
void setup() {
  led(5);                     // expect problem: program.notCallable name=led
}
void loop() {}
