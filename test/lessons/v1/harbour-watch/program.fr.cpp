// La garde du port : elle dit ce qu'elle voit.
const int lampPin = 9;

void setup() {
  pinMode(lampPin, OUTPUT);
  Serial.begin(9600);
}

void loop() {
  digitalWrite(lampPin, analogRead(A0) < 300 ? HIGH : LOW);
  Serial.println("tout est calme"); /* chaque seconde */
  delay(1000);
}
