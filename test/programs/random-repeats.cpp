// random() draws the same numbers after every reset (avr-libc: minimal standard generator, seed 1: 16807, 282475249 …).
void setup() {
  Serial.begin(115200);
  Serial.println(random(2147483647));   // expect: 16807
  Serial.println(random(2147483647));   // expect: 282475249
  randomSeed(42);
  long a = random(1000);
  randomSeed(42);
  Serial.println(a == random(1000));    // expect: 1
  bool inside = true;
  for (int i = 0; i < 200; i++) {
    long r = random(1, 7);
    if (r < 1 || r > 6) inside = false;
  }
  Serial.println(inside);               // expect: 1
}
void loop() {}
