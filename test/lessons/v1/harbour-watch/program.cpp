// The watch of the harbour: says what it sees.
const int lampPin = 9;

void setup() {
  pinMode(lampPin, OUTPUT);
  Serial.begin(9600);
}

void loop() {
  digitalWrite(lampPin, analogRead(A0) < 300 ? HIGH : LOW);
  Serial.println("all quiet");  // every second
  delay(1000);
}
