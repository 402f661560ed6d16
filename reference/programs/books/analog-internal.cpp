// run 300 ms
// inputs [{"ms":0,"pin":"A0","value":100},{"ms":150,"pin":"A0","value":900}]
void setup() {
  analogReference(DEFAULT);
  Serial.begin(9600);
}
void loop() {
  long mv = analogRead(A0) * 5000L / 1023;
  Serial.print(mv);
  Serial.println(" mV");
  delay(100);
}
