// "abc" + 1 moves a pointer: the first letter is lost.
void setup() {
  Serial.begin(115200);
  Serial.println("value:" + 3);        // expect: ue:
}
void loop() {}
