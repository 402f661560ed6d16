// run 300 ms
const int values[] = {1000, 900, 500, 400, 100, 90, 50, 40, 10, 9, 5, 4, 1};
const char *signs[] = {"M", "CM", "D", "CD", "C", "XC", "L", "XL", "X", "IX", "V", "IV", "I"};
void roman(int n, char *out) {
  out[0] = 0;
  for (unsigned i = 0; i < sizeof values / sizeof values[0]; i++)
    while (n >= values[i]) {
      strcat(out, signs[i]);
      n -= values[i];
    }
}
void binary(unsigned n) {
  if (n > 1) binary(n / 2);
  Serial.print(n % 2);
}
char *trimmed(char *s) {
  while (isspace(*s)) s++;
  char *end = s + strlen(s);
  while (end > s && isspace(end[-1])) *--end = 0;
  return s;
}
void setup() {
  Serial.begin(115200);
  char text[20];
  for (const int &n : values) {
    roman(n + 3, text);
    Serial.print(text);
    Serial.print(' ');
  }
  Serial.println();
  binary(1234);
  Serial.println();
  char padded[] = "  rope and hook \n";
  Serial.print(trimmed(padded));
  Serial.println("|");
  char one[8], two[12];
  dtostrf(3.14159, 7, 2, one);
  itoa(-300, two, 10);
  Serial.print(one); Serial.println(two);
  snprintf(two, sizeof two, "%d:%02d %c", 7, 5, 'x');
  Serial.println(two);
  Serial.println(strrchr("a/b/c", '/'));
  Serial.println(atoi("  42x"));
  Serial.println(strtol("ff", NULL, 16));
  Serial.println(abs(-5) + max(2, 9) + min(4, 1));
}
void loop() {}
