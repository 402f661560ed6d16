// run 600 ms
// inputs [{"ms":0,"pin":"A0","value":100},{"ms":100,"pin":"A0","value":250},{"ms":260,"pin":"A0","value":40}]
struct Sample { unsigned int ms; int value; };
const byte MOST = 5;
Sample log_[MOST];
byte n = 0;
int extreme(bool wantHigh) {
  int best = log_[0].value;
  for (byte i = 1; i < n; i++)
    if (wantHigh ? log_[i].value > best : log_[i].value < best) best = log_[i].value;
  return best;
}
void setup() { Serial.begin(115200); }
void loop() {
  if (n < MOST) {
    log_[n++] = {(unsigned int)(millis() / 50 * 50), analogRead(A0)};
    delay(80);
    if (n == MOST) {
      for (const Sample &s : log_) { Serial.print(s.ms); Serial.print(": "); Serial.println(s.value); }
      Serial.print("high "); Serial.println(extreme(true));
      Serial.print("low "); Serial.println(extreme(false));
      float mean = 0;
      for (auto s : log_) mean += s.value;
      Serial.println(mean / n, 1);
    }
  }
}
