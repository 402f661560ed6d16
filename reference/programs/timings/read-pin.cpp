// Reading a pin again and again. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  int n = 0;
  for (int i = 0; i < 500; i++)
    if (digitalRead(4) == LOW) n++;
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
