// Bytes and bits. The pin is high as long as it lasts.
// run 400 ms
volatile long result;

void work() {
  byte c = 0x5A;
  for (int i = 0; i < 1000; i++) {
    if (c & 0x80) c = (c << 1) ^ 0x1D;
    else c <<= 1;
  }
  result = c;
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
