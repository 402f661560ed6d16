// The lighthouse: five flashes, then a long rest in the dark.

const int lampPin = 9;       // the lamp is on D9
const int flashes = 5;       // how many flashes in one group
const int lightTime = 500;   // milliseconds of light
const int darkTime = 500;    // milliseconds of dark after each flash
const int restTime = 5000;   // milliseconds of rest after the group

void setup() {
  pinMode(lampPin, OUTPUT);
}

void loop() {
  for (int i = 0; i < flashes; i++) {
    digitalWrite(lampPin, HIGH);
    delay(lightTime);
    digitalWrite(lampPin, LOW);
    delay(darkTime);
  }
  delay(restTime);
}
