// Counting bits. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  int n = 0;
  for (unsigned int i = 0; i < 300; i++)
    for (unsigned int v = i; v; v >>= 1) n += v & 1;
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
