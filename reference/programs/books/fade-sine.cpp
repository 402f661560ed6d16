// run 700 ms
byte wave[32];
void setup() {
  for (int i = 0; i < 32; i++) wave[i] = 127.5 + 127.5 * sin(i * 2 * PI / 32);
  pinMode(9, OUTPUT);
}
void loop() {
  for (byte level : wave) {
    analogWrite(9, level);
    delay(20);
  }
}
