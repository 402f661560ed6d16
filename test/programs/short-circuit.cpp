// The right side of && and || runs only if it matters.
int calls = 0;
bool called() {
  calls++;
  return true;
}
void setup() {
  Serial.begin(115200);
  bool a = false && called();
  bool b = true || called();
  Serial.println(calls);      // expect: 0
  bool c = true && called();
  bool d = false || called();
  Serial.println(calls);      // expect: 2
  bool e = false & called();
  Serial.println(calls);      // expect: 3
}
void loop() {}
