// Texts in tables: an array of pointers, and an array of arrays.
const char *names[] = {"red", "green", "blue"};
char words[3][10] = {"ab", "cde"};
void setup() {
  Serial.begin(115200);
  for (const char *n : names) Serial.print(n[0]);
  Serial.println();                           // expect: rgb
  Serial.println(words[1]);                   // expect: cde
  Serial.println(strlen(words[2]));           // expect: 0
  strcpy(words[2], names[1]);
  Serial.println(words[2]);                   // expect: green
  Serial.println(sizeof(names) / sizeof(names[0]));  // expect: 3
}
void loop() {}
