// A line is read up to its end, which is taken and not given.
// run 3000 ms
// inputs [{"ms":100,"text":"led on\nnext"}]
void setup() { Serial.begin(9600); }
void loop() {
  if (Serial.available()) {
    String line = Serial.readStringUntil('\n');
    line.trim();
    Serial.println("<" + line + ">");   // expect: <led on>
    if (line == "led on") Serial.println("on");  // expect: on
    Serial.println(Serial.readString());         // expect: next
  }
}
