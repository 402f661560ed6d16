// In functions too.
void setup() {
  digitalwrite(13, HIGH);     // expect problem: program.unknownName name=digitalwrite near=digitalWrite
}
void loop() {}
