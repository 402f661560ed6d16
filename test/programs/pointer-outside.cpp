// A pointer that has left its array may not be followed.
int values[3] = {1, 2, 3};
int sumOf(int *list, int count) {
  int sum = 0;
  for (int i = 0; i < count; i++) {
    sum += list[i];           // expect broken: program.indexOutside 3 3
  }
  return sum;
}
void setup() {
  Serial.begin(115200);
  Serial.println(sumOf(values, 3));  // expect: 6
  Serial.println(sumOf(values, 4));
}
void loop() {}
