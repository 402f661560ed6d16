// A variable lives in its own braces.
void setup() {
  int speed = 3;
}
void loop() {
  delay(speed);               // expect problem: program.unknownName name=speed
}
