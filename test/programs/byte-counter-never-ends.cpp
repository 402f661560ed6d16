// A byte is always less than 256: this loop runs for ever, and the run says so.
// run 300 ms
void setup() {
  Serial.begin(115200);
  Serial.println("start");    // expect: start
  long n = 0;
  for (byte i = 0; i < 256; i++) {
    n++;
    if (n == 600) Serial.println(i);  // expect: 87
  }
  Serial.println("never");
}
void loop() {}
