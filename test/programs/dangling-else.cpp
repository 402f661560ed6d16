// else belongs to the nearest if, whatever the indent says.
void setup() {
  Serial.begin(115200);
  int a = 1, b = 0;
  if (a == 0)
    if (b == 0)
      Serial.println("both");
  else
    Serial.println("never here");
  Serial.println("end");      // expect: end
}
void loop() {}
