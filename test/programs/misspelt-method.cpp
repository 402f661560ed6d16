// Methods are looked up in their class.
void setup() {
  Serial.printn("a");         // expect problem: program.unknownMember name=printn near=print
}
void loop() {}
