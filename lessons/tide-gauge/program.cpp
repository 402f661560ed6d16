// The tide gauge: it hears how far the water is, and eight lamps show how high it stands.

const int triggerPin = 7;
const int echoPin = 8;
const int dataPin = 11;
const int showPin = 12;       // its rise shows what was shifted in
const int clockPin = 13;
const int lowWater = 40;      // cm from the sensor to the water at low tide
const int step = 4;           // cm of water for each lamp

void setup() {
  pinMode(triggerPin, OUTPUT);
  pinMode(echoPin, INPUT);
  pinMode(dataPin, OUTPUT);
  pinMode(showPin, OUTPUT);
  pinMode(clockPin, OUTPUT);
  Serial.begin(9600);
}

void loop() {
  int distance = measure();
  showLevel((lowWater - distance) / step);
  Serial.print(distance);
  Serial.println(" cm");
  delay(200);
}

// The way to the water in cm: sound needs about 58 microseconds for 1 cm there and back.
int measure() {
  digitalWrite(triggerPin, HIGH);
  delayMicroseconds(10);
  digitalWrite(triggerPin, LOW);
  unsigned long echo = pulseIn(echoPin, HIGH, 30000);
  if (echo == 0) return lowWater;      // nothing in reach
  return (echo + 29) / 58;             // rounded
}

// As many lamps as the level says, from the lowest on.
void showLevel(int level) {
  level = constrain(level, 0, 8);
  byte lamps = 0;
  for (int i = 0; i < level; i++) {
    bitSet(lamps, i);
  }
  digitalWrite(showPin, LOW);
  shiftOut(dataPin, clockPin, MSBFIRST, lamps);
  digitalWrite(showPin, HIGH);
}
