// Sorting forty numbers. The pin is high as long as it lasts.
// run 400 ms
volatile long result;
int list[40];

void work() {
  for (int i = 0; i < 40; i++) list[i] = (i * 37) % 41;
  for (int i = 0; i < 39; i++)
    for (int k = 0; k < 39 - i; k++)
      if (list[k] > list[k + 1]) {
        int t = list[k];
        list[k] = list[k + 1];
        list[k + 1] = t;
      }
  result = list[7];
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
