// A function runs when the pin falls, also in the middle of a delay.
// run 1000 ms
// inputs [{"ms":0,"pin":"D2","level":"high"},{"ms":150,"pin":"D2","level":"low"},{"ms":250,"pin":"D2","level":"high"},{"ms":620,"pin":"D2","level":"low"}]
// expect pins: D9 high 150, D9 low 620
volatile int count = 0;
void pressed() {
  count++;
  digitalWrite(9, count % 2);
}
void setup() {
  Serial.begin(115200);
  pinMode(9, OUTPUT);
  pinMode(2, INPUT);
  attachInterrupt(digitalPinToInterrupt(2), pressed, FALLING);
  delay(800);
  Serial.println(count);            // expect: 2
}
void loop() {}
