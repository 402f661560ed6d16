// == compares and does nothing else.
void setup() {
  Serial.begin(115200);
  int x = 1;
  x == 5;                     // expect problem: program.noEffect
  Serial.println(x);          // expect: 1
}
void loop() {}
