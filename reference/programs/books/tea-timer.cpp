// run 6500 ms
// inputs [{"ms":0,"pin":"D2","level":"high"},{"ms":250,"pin":"D2","level":"low"},{"ms":300,"pin":"D2","level":"high"}]
const byte leds[] = {4, 5, 6};
int remaining = 0;
unsigned long tick;
void setup() {
  pinMode(2, INPUT_PULLUP);
  for (byte i = 0; i < 3; i++) pinMode(leds[i], OUTPUT);
  Serial.begin(9600);
}
void loop() {
  if (remaining == 0) {
    if (digitalRead(2) == LOW) {
      remaining = 5;
      tick = millis();
      for (byte l : leds) digitalWrite(l, HIGH);
    }
    return;
  }
  if (millis() - tick < 1000) return;
  tick += 1000;
  remaining--;
  Serial.print(remaining / 60);
  Serial.print(':');
  if (remaining % 60 < 10) Serial.print('0');
  Serial.println(remaining % 60);
  for (byte i = 0; i < 3; i++) digitalWrite(leds[i], remaining > i * 2);
  if (!remaining) tone(9, 880, 300);
}
