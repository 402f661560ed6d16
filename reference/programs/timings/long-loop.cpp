// A loop that counts in a long. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  volatile long n = 0;
  while (n < 5000) n++;
  result = n;
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
