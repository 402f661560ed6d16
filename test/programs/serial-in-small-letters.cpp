// Serial begins with a capital.
void setup() {
  serial.begin(9600);         // expect problem: program.unknownName name=serial near=Serial
}
void loop() {}
