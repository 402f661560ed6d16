// The counter of for is gone behind it.
void setup() {
  for (int i = 0; i < 3; i++) {}
  delay(i);                   // expect problem: program.unknownName name=i
}
void loop() {}
