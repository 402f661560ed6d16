// Multiplying, shifting and testing. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  int x = 1;
  long s = 0;
  for (unsigned long i = 0; i < 1000; i++) {
    x = x * 25 + 13;
    s += x >> 3;
    if (s > 100000) s -= 100000;
  }
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
