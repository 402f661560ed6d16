// 08 is no octal number.
void setup() {
  int pin = 08;               // expect problem: program.badNumber
}
void loop() {}
