// Division by zero is undefined (C++11, section 5.6).
int parts = 0;
void setup() {
  int share = 100 / parts;    // expect broken: program.divisionByZero
  Serial.println(share);
}
void loop() {}
