// digitalWrite needs two values.
void setup() {
  digitalWrite(13);           // expect problem: program.argumentCount name=digitalWrite expected=2 found=1
}
void loop() {}
