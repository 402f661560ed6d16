// while may run never, do at least once; the counter of for is gone afterwards.
void setup() {
  Serial.begin(115200);
  int n = 0;
  while (n > 0) n--;
  do n++; while (n > 5);
  Serial.println(n);          // expect: 1
  int count = 0;
  for (int i = 10; i > 0; i -= 3) count++;
  Serial.println(count);      // expect: 4
  for (;;) {
    if (++count == 8) break;
  }
  Serial.println(count);      // expect: 8
  int total = 0;
  for (int i = 0, j = 10; i < j; i++, j--) total += j - i;
  Serial.println(total);      // expect: 30
}
void loop() {}
