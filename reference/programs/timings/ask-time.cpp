// Asking the time again and again. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  unsigned long t = 0;
  for (int i = 0; i < 500; i++) t += millis() - micros() / 1000;
  result = t < 100000;
}

void setup() {
  Serial.begin(115200);
  pinMode(13, OUTPUT);
  digitalWrite(13, HIGH);
  work();
  digitalWrite(13, LOW);
  Serial.println(result);
}

void loop() {}
