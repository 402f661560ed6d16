// map() counts in long and cuts: the top value is met only at the top.
void setup() {
  Serial.begin(115200);
  Serial.println(map(1022, 0, 1023, 0, 10));  // expect: 9
  Serial.println(map(-1, 0, 100, 0, 10));     // expect: 0
  Serial.println(map(150, 0, 100, 0, 10));    // expect: 15
}
void loop() {}
