// A semicolon behind if (…) is its whole body.
void setup() {
  Serial.begin(115200);
  int x = 3;
  if (x > 5);                 // expect problem: program.emptyBody
  {
    Serial.println("always"); // expect: always
  }
  for (int i = 0; i < 3; i++);  // expect problem: program.emptyBody
  Serial.println("once");       // expect: once
}
void loop() {}
