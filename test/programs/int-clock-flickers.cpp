// An int holds no more than 32 seconds of milliseconds: 30000 + 10000 is negative, and the light flickers from then on.
// run 32000 ms
int before = 0;
int changes = 0;
bool on = false;
void setup() {
  Serial.begin(115200);
  pinMode(9, OUTPUT);
}
void loop() {
  int now = millis();
  if (now >= before + 10000) {
    before = now;
    on = !on;
    digitalWrite(9, on);
    if (changes < 1000) changes++;
    if (changes == 3) Serial.println(now / 100);  // expect: 300
    if (changes == 500) Serial.println(now / 100);  // expect: 300
  }
}
