// run 200 ms
int a[5] = {1, 2, 3, 4, 5}, b[5];
byte raw[4];
struct Log { int n; byte kind; } logs[3] = {{1, 2}, {3, 4}, {5, 6}}, saved;
char text[10] = "tide";
void show(const int *p, size_t n) {
  while (n--) { Serial.print(*p++); Serial.print(' '); }
  Serial.println();
}
void setup() {
  Serial.begin(115200);
  memcpy(b, a, sizeof(a));
  b[0] = 9;
  show(b, 5);
  memset(a, 0, sizeof(a));
  show(a, 5);
  memcpy(a + 1, b, 3 * sizeof(int));
  show(a, 5);
  memset(raw, 0xFF, 4);
  Serial.println(raw[3]);
  saved = logs[1];
  Serial.println(saved.n * 10 + saved.kind);
  memmove(text + 1, text, 5);
  Serial.println(text);
  Serial.println(memcmp(a + 1, b, 6));
}
void loop() {}
