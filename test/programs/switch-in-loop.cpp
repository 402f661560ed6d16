// break leaves the switch, continue goes on with the loop.
void setup() {
  Serial.begin(115200);
  int sum = 0;
  for (int i = 0; i < 6; i++) {
    switch (i) {
      case 1: continue;
      case 3: break;
      default: sum += 100;
    }
    sum += i;
  }
  Serial.println(sum);        // expect: 414
}
void loop() {}
