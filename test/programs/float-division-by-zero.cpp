// Floats have infinity and not-a-number instead.
void setup() {
  Serial.begin(115200);
  float zero = 0;
  Serial.println(1 / zero);   // expect: inf
  Serial.println(zero / zero);  // expect: nan
  Serial.println(isnan(zero / zero));  // expect: 1
}
void loop() {}
