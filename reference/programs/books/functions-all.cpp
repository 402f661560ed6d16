// run 300 ms
void lights(byte pin, bool on = true, unsigned int ms = 5);
int add(int a, int b) { return a + b; }
long add(long a, long b) { return a + b + 1000000L; }
float add(float a, float b) { return a + b; }
void minMax(const int *list, byte n, int &low, int &high);
int &element(int list[], int i) { return list[i]; }
int counter() { static int n = 10; return ++n; }
inline int twice(int x) { return x * 2; }
int apply(int (*g)(int), int x) { return g(g(x)); }
void fill(char *to, char c, int n) { while (n--) *to++ = c; *to = 0; }
const char *dayName(byte d) {
  static const char *const names[] = {"Mon", "Tue", "Wed"};
  return d < 3 ? names[d] : "-";
}
void setup() {
  Serial.begin(115200);
  lights(13);
  lights(13, false, 3);
  Serial.println(add(1, 2));
  Serial.println(add(1L, 2L));
  Serial.println(add(1.5f, 2.0f));
  int list[] = {4, -9, 12, 0}, low, high;
  minMax(list, 4, low, high);
  Serial.println(low); Serial.println(high);
  element(list, 2) = 77;
  Serial.println(list[2]);
  counter(); counter();
  Serial.println(counter());
  Serial.println(apply(twice, 5));
  char bar[11];
  fill(bar, '=', 10);
  Serial.println(bar);
  Serial.println(dayName(1));
  Serial.println(dayName(9));
  later();
}
void later() { Serial.println("later"); }
void lights(byte pin, bool on, unsigned int ms) {
  pinMode(pin, OUTPUT);
  digitalWrite(pin, on);
  delay(ms);
}
void minMax(const int *list, byte n, int &low, int &high) {
  low = high = list[0];
  for (byte i = 1; i < n; i++) {
    low = min(low, list[i]);
    high = max(high, list[i]);
  }
}
void loop() {}
