// Writing pins again and again. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  for (int i = 0; i < 300; i++) {
    digitalWrite(7, i & 1);
    digitalWrite(9, LOW);
  }
  result = 1;
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
