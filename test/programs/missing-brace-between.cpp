// setup is not closed: loop would be a function inside a function.
void setup() {
  pinMode(13, OUTPUT);

void loop() {                 // expect problem: program.functionInFunction name=loop
  delay(10);
}
// expect problem at 7: program.expected expected=} found=
