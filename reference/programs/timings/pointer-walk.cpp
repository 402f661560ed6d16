// A pointer walks over an array. The pin is high as long as it lasts.
// run 400 ms
volatile long result;
int list[40];

void work() {
  long s = 0;
  for (int k = 0; k < 20; k++)
    for (int *p = list; p < list + 40; p++) s += *p;
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
