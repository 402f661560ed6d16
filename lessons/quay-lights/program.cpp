// The quay lights: one after another along the quay, and back again.

const int firstPin = 3;
const int lastPin = 7;
const int step = 300;          // ms that each light is on

void show(int pin) {
  digitalWrite(pin, HIGH);
  delay(step);
  digitalWrite(pin, LOW);
}

void setup() {
  for (int pin = firstPin; pin <= lastPin; pin++) {
    pinMode(pin, OUTPUT);
  }
}

void loop() {
  for (int pin = firstPin; pin <= lastPin; pin++) {       // out: 3 4 5 6 7
    show(pin);
  }
  for (int pin = lastPin - 1; pin > firstPin; pin--) {    // and back: 6 5 4
    show(pin);
  }
}
