// The sieve of Eratosthenes. The pin is high as long as it lasts.
// run 400 ms
volatile long result;
byte flags[400];

void work() {
  for (int i = 0; i < 400; i++) flags[i] = 1;
  int count = 0;
  for (int i = 2; i < 400; i++) {
    if (!flags[i]) continue;
    count++;
    for (int k = i * 2; k < 400; k += i) flags[k] = 0;
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
