// run 3500 ms
// inputs [{"ms":0,"pin":"D2","level":"high"},{"ms":2900,"pin":"D2","level":"low"},{"ms":2950,"pin":"D2","level":"high"}]
void setup() {
  Serial.begin(9600);
  pinMode(13, OUTPUT);
  pinMode(2, INPUT_PULLUP);
  randomSeed(12);
  delay(random(500, 2500));
  digitalWrite(13, HIGH);
  unsigned long from = millis();
  while (digitalRead(2) == HIGH) {
  }
  unsigned long took = millis() - from;
  digitalWrite(13, LOW);
  Serial.print("took ");
  Serial.print(took);
  Serial.println(" ms");
  if (took < 250) Serial.println("fast");
  else if (took < 600) Serial.println("good");
  else Serial.println("asleep?");
}
void loop() {}
