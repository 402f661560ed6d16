// Dividing an int. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  int s = 0;
  for (int i = 1; i < 500; i++) s += 30000 / i;
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
