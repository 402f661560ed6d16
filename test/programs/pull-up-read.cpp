// An input that nothing drives reads high with its pull-up and low here without one.
void setup() {
  Serial.begin(115200);
  pinMode(4, INPUT);
  Serial.println(digitalRead(4));   // expect: 0
  pinMode(4, INPUT_PULLUP);
  Serial.println(digitalRead(4));   // expect: 1
  pinMode(4, OUTPUT);
  Serial.println(digitalRead(4));   // expect: 1
  digitalWrite(4, LOW);
  Serial.println(digitalRead(4));   // expect: 0
}
void loop() {}
