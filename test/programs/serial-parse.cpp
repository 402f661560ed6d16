// parseInt skips what is no digit and waits a second for more.
// run 3000 ms
// inputs [{"ms":100,"text":"speed 42\n"}]
void setup() { Serial.begin(9600); }
void loop() {
  if (Serial.available()) {
    int n = Serial.parseInt();
    Serial.println(n);              // expect: 42
    while (Serial.available()) Serial.read();
  }
}
