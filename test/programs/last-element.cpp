// The last place is one less than the length.
int list[] = {3, 1, 2};
const int length = sizeof(list) / sizeof(list[0]);
void setup() {
  Serial.begin(115200);
  Serial.println(list[length - 1]);   // expect: 2
  Serial.println(list[length]);       // expect broken: program.indexOutside 3 3
}
void loop() {}
