// Without its brackets a function is not called.
void beep() { Serial.println("beep"); }
void setup() {
  Serial.begin(115200);
  beep;                       // expect problem: program.noEffect
  Serial.println("silent");   // expect: silent
}
void loop() {}
