// The middle of five. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  long s = 0;
  for (int k = 0; k < 60; k++) {
    int five[5];
    for (byte i = 0; i < 5; i++) five[i] = (k * 31 + i * 17) % 50;
    for (byte i = 1; i < 5; i++) {
      int v = five[i];
      int at = i - 1;
      while (at >= 0 && five[at] > v) {
        five[at + 1] = five[at];
        at--;
      }
      five[at + 1] = v;
    }
    s += five[2];
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
