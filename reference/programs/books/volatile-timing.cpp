// run 1200 ms
// inputs [{"ms":0,"pin":"D2","level":"low"},{"ms":100.5,"pin":"D2","level":"high"},{"ms":150.5,"pin":"D2","level":"low"},{"ms":350.5,"pin":"D2","level":"high"},{"ms":400.5,"pin":"D2","level":"low"},{"ms":600.5,"pin":"D2","level":"high"},{"ms":900.5,"pin":"D2","level":"low"}]
volatile unsigned long riseAt, width;
volatile bool fresh = false;
void onChange() {
  if (digitalRead(2)) riseAt = millis();
  else {
    width = millis() - riseAt;
    fresh = true;
  }
}
void setup() {
  Serial.begin(9600);
  pinMode(2, INPUT);
  attachInterrupt(0, onChange, CHANGE);
}
void loop() {
  if (fresh) {
    fresh = false;
    Serial.println((width + 2) / 5 * 5);
    if (width > 200) detachInterrupt(digitalPinToInterrupt(2));
  }
}
