// The quay lamp: on when it gets dark, off when it is bright again, and no change in between.

const int sensorPin = A0;      // between the light sensor and R1
const int lampPin = 9;
const int darkBelow = 250;     // below this number it is night
const int brightAbove = 600;   // above this number it is day
const int brightness = 120;    // 0 is dark, 255 is full light

bool lampOn = false;

void setup() {
  pinMode(lampPin, OUTPUT);
  Serial.begin(9600);
}

void loop() {
  int light = analogRead(sensorPin);   // 0 to 1023: more light, larger number
  Serial.println(light);

  if (light < darkBelow) {
    lampOn = true;
  }
  if (light > brightAbove) {
    lampOn = false;
  }

  if (lampOn) {
    analogWrite(lampPin, brightness);
  } else {
    analogWrite(lampPin, 0);
  }
  delay(200);
}
