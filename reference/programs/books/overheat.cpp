// run 3000 ms
// inputs [{"ms":0,"pin":"A0","value":300},{"ms":800,"pin":"A0","value":760},{"ms":2000,"pin":"A0","value":650}]
#include "stdint.h"
const int16_t LIMIT = 700, BACK = 660;
bool alarm = false;
uint32_t lastBeep = 0;
void setup() { pinMode(7, OUTPUT); }
void loop() {
  int16_t v = 0;
  for (uint8_t i = 0; i < 4; ++i) v += analogRead(A0) >> 2;
  if (!alarm && v > LIMIT) alarm = true;
  else if (alarm && v < BACK) { alarm = false; noTone(7); }
  if (alarm && millis() - lastBeep > 400) {
    tone(7, 1500, 150);
    lastBeep = millis();
  }
}
