// run 4000 ms
// inputs [{"ms":50,"text":"12,-5\n"},{"ms":1600,"text":"2.5 x\n"}]
void setup() {
  Serial.begin(9600);
  Serial.setTimeout(200);
}
void loop() {
  if (Serial.available() > 0) {
    if (millis() < 1000) {
      int a = Serial.parseInt();
      int b = Serial.parseInt();
      Serial.println(a * b);
      while (Serial.available()) Serial.read();
    } else {
      float f = Serial.parseFloat();
      Serial.println(f * f, 3);
      while (Serial.available() && Serial.peek() != 'x') Serial.read();
      Serial.print((char)Serial.read());
      delay(20);
      while (Serial.read() >= 0);
      Serial.println();
    }
  }
}
