// run 800 ms
// inputs [{"ms":0,"pin":"A5","value":77}]
int counts[7] = {0};
void setup() {
  Serial.begin(115200);
  randomSeed(analogRead(A5));
  for (int i = 0; i < 120; i++) counts[random(1, 7)]++;
  int sum = 0;
  for (int face = 1; face <= 6; face++) {
    Serial.print(face);
    Serial.print(": ");
    for (int k = 0; k < counts[face]; k += 5) Serial.print('*');
    Serial.println();
    sum += counts[face];
  }
  Serial.println(sum);
  Serial.println(random(1000));
  Serial.println(random(-1000, 1000));
}
void loop() {}
