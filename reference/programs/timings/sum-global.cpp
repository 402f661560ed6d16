// Adding in a global. The pin is high as long as it lasts.
// run 400 ms
volatile long result;
long total = 0;

void work() {
  total = 0;
  for (int i = 0; i < 1000; i++) total += i * 3;
  result = total;
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
