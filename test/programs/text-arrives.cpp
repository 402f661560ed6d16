// serialEvent() is called between rounds of loop() when text has arrived.
// run 500 ms
// inputs [{"ms":100,"text":"ab"}]
int rounds = 0;
void serialEvent() {
  while (Serial.available()) {
    char c = Serial.read();
    Serial.println(c);
  }
}
void setup() { Serial.begin(9600); }
void loop() {
  rounds++;
  delay(50);
}
// expect: a
// expect: b
