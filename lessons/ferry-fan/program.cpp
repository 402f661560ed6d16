// The ferry fan: the key sends the ferry off. The fan blows for three seconds, and a green lamp shows it.

const int keyPin = 2;              // the key joins D2 to GND
const int fanPin = 9;              // through 470 ohms to the base of the transistor
const int lampPin = 10;
const unsigned long crossing = 3000;   // milliseconds

void setup() {
  pinMode(keyPin, INPUT_PULLUP);   // HIGH until the key is pressed
  pinMode(fanPin, OUTPUT);
  pinMode(lampPin, OUTPUT);
}

void loop() {
  if (digitalRead(keyPin) == LOW) {
    blow(true);
    delay(crossing);
    blow(false);
  }
}

void blow(bool on) {
  digitalWrite(fanPin, on);
  digitalWrite(lampPin, on);
}
