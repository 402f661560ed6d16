// An array of five has the places 0 to 4.
int values[5] = {1, 2, 3, 4, 5};
void setup() {
  Serial.begin(115200);
  int sum = 0;
  for (int i = 0; i <= 5; i++) {
    sum += values[i];         // expect broken: program.indexOutside 5 5
  }
  Serial.println(sum);
}
void loop() {}
