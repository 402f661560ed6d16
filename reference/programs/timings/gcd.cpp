// Euclid's remainder. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  int s = 0;
  for (int a = 1; a < 40; a++) {
    int x = a * 17, y = 360;
    while (y != 0) {
      int t = x % y;
      x = y;
      y = t;
    }
    s += x;
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
