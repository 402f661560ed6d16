// Counting primes by trial. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  int count = 0;
  for (int n = 2; n < 300; n++) {
    bool prime = true;
    for (int d = 2; d * d <= n; d++)
      if (n % d == 0) {
        prime = false;
        break;
      }
    if (prime) count++;
  }
  result = count;
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
