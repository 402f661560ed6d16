// run 1500 ms
int g;
void wait() { for (unsigned int i = 0; i < 60000; i++) { } }
void setup() {
  Serial.begin(115200);
  pinMode(13, OUTPUT);
  digitalWrite(13, HIGH);
  for (long i = 0; i < 1000000; i++);
  digitalWrite(13, LOW);
  wait();
  digitalWrite(13, HIGH);
  for (int a = 0; a < 100; a++) for (int b = 0; b < 1000; b++);
  digitalWrite(13, LOW);
  int i;
  for (i = 0; i < 30; i += 7) {}
  digitalWrite(13, HIGH);
  for (g = 500; g > 20; g--);
  digitalWrite(13, LOW);
  for (volatile int v = 0; v < 20000; v++);
  digitalWrite(13, HIGH);
  byte b;
  for (b = 200; b >= 100; b -= 3);
  digitalWrite(13, LOW);
  Serial.println(i);
  Serial.println(g);
  Serial.println(b);
}
void loop() {}
