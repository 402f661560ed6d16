// A pulse is measured in microseconds.
// run 3000 ms
// inputs [{"ms":100,"pin":"D7","level":"high"},{"ms":101.5,"pin":"D7","level":"low"}]
void setup() {
  Serial.begin(115200);
  unsigned long width = pulseIn(7, HIGH);
  Serial.println(width > 1490 && width < 1510);   // expect: 1
  Serial.println(pulseIn(7, HIGH));               // expect: 0
}
void loop() {}
