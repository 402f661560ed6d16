// The dimmer: the knob says how bright the cabin lamp is.

const int knobPin = A0;
const int lampPin = 9;         // a pin that can do analogWrite

void setup() {
  pinMode(lampPin, OUTPUT);
  Serial.begin(9600);
}

void loop() {
  int knob = analogRead(knobPin);                     // 0 to 1023
  int brightness = map(knob, 0, 1023, 0, 255);        // 0 to 255
  analogWrite(lampPin, brightness);
  Serial.println(brightness);
  delay(50);
}
