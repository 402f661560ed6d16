// The harbour's thermometer: writes the temperature each second and warns when the water is too warm.

const int sensorPin = A0;      // between the thermistor and R1
const int lampPin = 9;
const float fixedOhms = 10000.0;    // R1
const float ohmsAt25 = 10000.0;     // the thermistor at 25 degrees
const float beta = 3950.0;          // how fast it changes, from its data sheet
const float tooWarm = 28.0;

float celsius(int number) {
  float ohms = fixedOhms * (1023.0 / number - 1.0);
  float kelvin = 1.0 / (1.0 / 298.15 + log(ohms / ohmsAt25) / beta);
  return kelvin - 273.15;
}

void setup() {
  pinMode(lampPin, OUTPUT);
  Serial.begin(9600);
}

void loop() {
  int number = analogRead(sensorPin);
  float water = celsius(number);
  Serial.print(water, 1);
  if (water > tooWarm) {
    digitalWrite(lampPin, HIGH);
    Serial.println(" degrees, too warm");
  } else {
    digitalWrite(lampPin, LOW);
    Serial.println(" degrees");
  }
  delay(1000);
}
