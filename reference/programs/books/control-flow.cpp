// run 400 ms
int depth(int n) {
  if (n <= 1) return 0;
  return 1 + depth(n % 2 ? 3 * n + 1 : n / 2);
}
void setup() {
  Serial.begin(115200);
  for (int i = 0, j = 10; i < j; i += 2, j--) { Serial.print(i * j); Serial.print(' '); }
  Serial.println();
  int n = 0;
  while (true) {
    if (++n % 2) continue;
    if (n > 8) break;
    Serial.print(n);
  }
  Serial.println();
  do n--; while (n > 3);
  Serial.println(n);
  for (;;) { if (n-- == 0) break; }
  Serial.println(n);
  for (char c = 'a'; c <= 'e'; c++) switch (c) {
    case 'a': Serial.print("A"); break;
    case 'b':
    case 'c': Serial.print("B");
    case 'd': Serial.print("D"); break;
    default: Serial.println("?");
  }
  Serial.println(depth(27));
  if (n) if (n > 0) Serial.println("plus"); else Serial.println("minus");
  int grid[3][3];
  for (int r = 0; r < 3; r++) for (int c = 0; c < 3; c++) grid[r][c] = r == c ? 1 : r > c ? 2 : 3;
  bool found = false;
  int at = 0;
  for (int r = 0; r < 3 && !found; r++)
    for (int c = 0; c < 3; c++)
      if (grid[r][c] == 2) { found = true; at = r * 10 + c; break; }
  Serial.println(at);

}
void loop() {}
