// run 300 ms
char shiftLetter(char c, int by) {
  if (c >= 'a' && c <= 'z') return 'a' + (c - 'a' + by + 26) % 26;
  if (c >= 'A' && c <= 'Z') return 'A' + (c - 'A' + by + 26) % 26;
  return c;
}
void encode(char *s, int by) {
  while (*s) {
    *s = shiftLetter(*s, by);
    ++s;
  }
}
bool isPalindrome(const char *s) {
  int i = 0, j = strlen(s) - 1;
  while (i < j)
    if (tolower(s[i++]) != tolower(s[j--])) return false;
  return true;
}
int vowels(const char s[]) {
  int n = 0;
  for (int i = 0; s[i] != '\0'; i++) {
    switch (s[i]) {
      case 'a': case 'e': case 'i': case 'o': case 'u':
        n++;
        break;
      default:
        ;
    }
  }
  return n;
}
char secret[] = "The harbour at dawn!";
void setup() {
  Serial.begin(115200);
  Serial.println(vowels(secret));
  encode(secret, 3);
  Serial.println(secret);
  encode(secret, -3);
  Serial.println(secret);
  Serial.println(isPalindrome("Level"));
  Serial.println(isPalindrome("tides"));
  char copy[12] = "";
  strncpy(copy, secret, 11);
  copy[11] = 0;
  strcat(copy, "");
  Serial.println(copy);
  Serial.println(strchr(copy, 'h'));
  Serial.println(strstr(secret, "dawn") - secret);
  Serial.println(strcmp("abc", "abd") < 0 ? "before" : "after");
}
void loop() {}
