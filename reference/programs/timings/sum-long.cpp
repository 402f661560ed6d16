// Adding in a long. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  long s = 0;
  for (int i = 0; i < 2000; i++) s += i;
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
