// run 1200 ms
// inputs [{"ms":0,"pin":"A0","value":512},{"ms":300,"pin":"A0","value":333},{"ms":600,"pin":"A0","value":801},{"ms":900,"pin":"A0","value":11}]
#include <math.h>
const float BETA = 3950;
const float R0 = 10000.0;
const float T0 = 298.15f;
float celsius(int raw) {
  float r = R0 * (1023.0 / raw - 1.0);
  float inv = 1.0 / T0 + log(r / R0) / BETA;
  return 1 / inv - 273.15;
}
void setup() { Serial.begin(9600); }
void loop() {
  int raw = analogRead(A0);
  float t = celsius(raw);
  Serial.print(raw);
  Serial.print('\t');
  Serial.print(t);
  Serial.print(" C\t");
  Serial.print(t * 9 / 5 + 32, 1);
  Serial.println(" F");
  if (t > 30) tone(8, 1000, 50);
  delay(300);
}
