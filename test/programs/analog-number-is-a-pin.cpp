// analogRead(0) and analogRead(A0) read the same pin.
// inputs [{"ms":0,"pin":"A0","value":300},{"ms":0,"pin":"A3","value":700}]
void setup() {
  Serial.begin(115200);
  Serial.println(analogRead(0));    // expect: 300
  Serial.println(analogRead(A0));   // expect: 300
  Serial.println(analogRead(3));    // expect: 700
  Serial.println(analogRead(17));   // expect: 700
  Serial.println(A3);               // expect: 17
  Serial.println(digitalRead(A3));  // expect: 1
}
void loop() {}
