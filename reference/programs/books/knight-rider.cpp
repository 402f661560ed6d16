// run 1500 ms
int timer = 60;
int ledPins[] = {2, 7, 4, 6, 5, 3};
int pinCount = 6;
void setup() {
  for (int thisPin = 0; thisPin < pinCount; thisPin++) pinMode(ledPins[thisPin], OUTPUT);
}
void loop() {
  for (int thisPin = 0; thisPin < pinCount; thisPin++) {
    digitalWrite(ledPins[thisPin], HIGH);
    delay(timer);
    digitalWrite(ledPins[thisPin], LOW);
  }
  for (int thisPin = pinCount - 1; thisPin >= 0; thisPin--) {
    digitalWrite(ledPins[thisPin], HIGH);
    delay(timer);
    digitalWrite(ledPins[thisPin], LOW);
  }
}
