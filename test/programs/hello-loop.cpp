// setup runs once, loop again and again.
// run 100 ms
int n = 0;
void setup() {
  Serial.begin(115200);
  Serial.println("setup");    // expect: setup
}
void loop() {
  n++;
  Serial.println(n);          // expect: 1
  if (n == 1) {
    delay(50);                // the second round comes 50 ms later
    Serial.println("again");  // expect: again
  } else {
    while (true) {}
  }
}
// expect: 2
