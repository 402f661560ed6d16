// An unsigned number is never below 0: counting down to 0 wraps.
void setup() {
  Serial.begin(115200);
  int rounds = 0;
  unsigned int i = 2;
  while (i >= 0) {
    rounds++;
    i--;
    if (rounds == 5) break;
  }
  Serial.println(i);          // expect: 65533
}
void loop() {}
