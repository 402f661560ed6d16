// The foghorn: while the key is down it calls in two pitches, and a lamp shows it to those who cannot hear it.

const int keyPin = 2;
const int hornPin = 8;
const int lampPin = 9;
const int lowHertz = 220;
const int highHertz = 330;
const int callTime = 500;      // ms for each pitch

void setup() {
  pinMode(keyPin, INPUT_PULLUP);
  pinMode(lampPin, OUTPUT);
}

void loop() {
  if (digitalRead(keyPin) == LOW) {
    digitalWrite(lampPin, HIGH);
    tone(hornPin, lowHertz);
    delay(callTime);
    tone(hornPin, highHertz);
    delay(callTime);
  } else {
    digitalWrite(lampPin, LOW);
    noTone(hornPin);
  }
}
