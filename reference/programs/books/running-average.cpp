// run 900 ms
// inputs [{"ms":0,"pin":"A1","value":500},{"ms":200,"pin":"A1","value":612},{"ms":420,"pin":"A1","value":90}]
const int numReadings = 8;
int readings[numReadings];
int readIndex = 0;
int total = 0;
int average = 0;
int inputPin = A1;
void setup() {
  Serial.begin(57600);
  for (int thisReading = 0; thisReading < numReadings; thisReading++) {
    readings[thisReading] = 0;
  }
}
void loop() {
  total = total - readings[readIndex];
  readings[readIndex] = analogRead(inputPin);
  total = total + readings[readIndex];
  readIndex = readIndex + 1;
  if (readIndex >= numReadings) {
    readIndex = 0;
  }
  average = total / numReadings;
  Serial.println(average);
  delay(40);
}
