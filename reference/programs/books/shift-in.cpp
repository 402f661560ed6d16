// run 300 ms
// inputs [{"ms":0,"pin":"D4","level":"high"},{"ms":150,"pin":"D4","level":"low"}]
void setup() {
  pinMode(4, INPUT);
  pinMode(5, OUTPUT);
  pinMode(6, OUTPUT);
  Serial.begin(9600);
}
void loop() {
  digitalWrite(6, LOW);
  digitalWrite(6, HIGH);
  byte v = shiftIn(4, 5, MSBFIRST);
  Serial.println(v, BIN);
  delay(100);
}
