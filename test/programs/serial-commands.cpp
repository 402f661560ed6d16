// Letters from the computer switch the light.
// run 1000 ms
// inputs [{"ms":100,"text":"1"},{"ms":400,"text":"0x1"}]
// expect pins: D13 high 101, D13 low 401, D13 high 403
void setup() {
  Serial.begin(9600);
  pinMode(13, OUTPUT);
}
void loop() {
  if (Serial.available() > 0) {
    char c = Serial.read();
    if (c == '1') digitalWrite(13, HIGH);
    if (c == '0') digitalWrite(13, LOW);
  }
}
