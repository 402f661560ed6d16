// A mean with floats. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  float s = 0;
  for (int i = 1; i < 200; i++) s = s * 0.9 + 0.1 * i;
  result = s;
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
