// delay needs one.
void setup() {
  delay(1, 2);                // expect problem: program.argumentCount name=delay expected=1 found=2
}
void loop() {}
