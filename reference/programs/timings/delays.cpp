// Many short waits. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  for (int i = 0; i < 40; i++) {
    delay(2);
    delayMicroseconds(300);
  }
  result = 2;
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
