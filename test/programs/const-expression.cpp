// Constants can give the length of an array.
const int pairs = 3;
constexpr int length = pairs * 2 + 1;
int list[length];
enum { LEDS = 4 };
byte pins[LEDS] = {2, 3, 4, 5};
void setup() {
  Serial.begin(115200);
  Serial.println(sizeof(list));       // expect: 14
  int n = 0;
  for (byte p : pins) n += p;
  Serial.println(n);                  // expect: 14
  auto x = 3L;
  Serial.println(sizeof(x));          // expect: 4
  auto y = 2.5;
  Serial.println(y * 2);              // expect: 5.00
}
void loop() {}
