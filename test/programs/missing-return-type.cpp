// A function says what it gives, if only void.
blink() {                     // expect problem: program.noType name=blink
  delay(10);
}
void setup() {}
void loop() {}
