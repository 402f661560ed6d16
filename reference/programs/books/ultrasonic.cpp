// run 900 ms
// inputs [{"ms":0,"pin":"D7","level":"low"},{"ms":101,"pin":"D7","level":"high"},{"ms":102.2,"pin":"D7","level":"low"},{"ms":340,"pin":"D7","level":"high"},{"ms":345.7,"pin":"D7","level":"low"}]
const int trig = 6, echo = 7;
float toCentimetres(unsigned long us) { return us * 0.0343 / 2; }
void setup() {
  Serial.begin(9600);
  pinMode(trig, OUTPUT);
  pinMode(echo, INPUT);
}
void loop() {
  digitalWrite(trig, LOW);
  delayMicroseconds(2);
  digitalWrite(trig, HIGH);
  delayMicroseconds(10);
  digitalWrite(trig, LOW);
  unsigned long us = pulseIn(echo, HIGH, 250000);
  if (us == 0) {
    Serial.println("out of range");
  } else {
    Serial.print((int)(toCentimetres(us) + 0.5));
    Serial.println(" cm");
  }
  delay(50);
}
