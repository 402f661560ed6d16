// A text is no number.
void setup() {
  int x = "12";               // expect problem: program.cannotConvert to=int
}
void loop() {}
