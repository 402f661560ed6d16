// Sizes on the chip (avr-g++ static_assert).
struct Point { int x; int y; byte colour; };
void setup() {
  Serial.begin(115200);
  Serial.println(sizeof(char));       // expect: 1
  Serial.println(sizeof(bool));       // expect: 1
  Serial.println(sizeof(int));        // expect: 2
  Serial.println(sizeof(long));       // expect: 4
  Serial.println(sizeof(float));      // expect: 4
  Serial.println(sizeof(char *));     // expect: 2
  Serial.println(sizeof(Point));      // expect: 5
  int list[7];
  Serial.println(sizeof(list) / sizeof(list[0]));  // expect: 7
  char text[] = "hello";
  Serial.println(sizeof(text));       // expect: 6
  Serial.println(strlen(text));       // expect: 5
  Serial.println(sizeof('a' + 1));    // expect: 2
}
void loop() {}
