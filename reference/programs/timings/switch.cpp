// Choosing among cases. The pin is high as long as it lasts.
// run 400 ms
volatile long result;
int list[8] = {3, 1, 2, 0, 7, 6, 5, 9};

void work() {
  int s = 0;
  for (int i = 0; i < 800; i++) {
    switch (list[i & 7] & 3) {
      case 0: s += 1; break;
      case 1: s -= 2; break;
      case 2: s ^= 5; break;
      default: s += 7;
    }
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
