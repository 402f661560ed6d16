// A series of fractions. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  float s = 0;
  for (int i = 1; i < 200; i++) s += 1.0 / i;
  result = s * 1000;
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
