// The button joins the pin to ground: pressed is low.
// run 1000 ms
// inputs [{"ms":200,"pin":"D2","level":"low"},{"ms":450,"pin":"D2","level":"high"},{"ms":700,"pin":"D2","level":"low"}]
// expect modes: D2 pull-up 0, D9 output 0
// expect pins: D9 high 200, D9 low 450, D9 high 700
void setup() {
  pinMode(2, INPUT_PULLUP);
  pinMode(9, OUTPUT);
}
void loop() {
  if (digitalRead(2) == LOW) digitalWrite(9, HIGH);
  else digitalWrite(9, LOW);
}
