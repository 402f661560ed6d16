// The signal lamp: light while the key is held down. Every press also changes the port light.

const int keyPin = 2;     // the key joins D2 to GND
const int lampPin = 9;    // the signal lamp
const int portPin = 10;   // the port light

bool portOpen = false;
int before = HIGH;        // what the key was in the pass before

void setup() {
  pinMode(keyPin, INPUT_PULLUP);   // HIGH until the key is pressed
  pinMode(lampPin, OUTPUT);
  pinMode(portPin, OUTPUT);
}

void loop() {
  int now = digitalRead(keyPin);

  if (now == LOW) {
    digitalWrite(lampPin, HIGH);
  } else {
    digitalWrite(lampPin, LOW);
  }

  if (before == HIGH && now == LOW) {   // the key has just gone down
    portOpen = !portOpen;
    digitalWrite(portPin, portOpen);
  }

  before = now;
  delay(20);                            // a key trembles for a few milliseconds: wait until it is quiet
}
