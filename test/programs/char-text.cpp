// Texts in char arrays end with a 0; == compares addresses.
void setup() {
  Serial.begin(115200);
  char a[] = "light";
  char b[10] = "light";
  Serial.println(strcmp(a, b) == 0);  // expect: 1
  Serial.println(a == b);             // expect: 0
  b[0] = 'n';
  Serial.println(b);                  // expect: night
  strcat(b, "s");
  Serial.println(strlen(b));          // expect: 6
  b[3] = '\0';
  Serial.println(b);                  // expect: nig
  Serial.println(atoi("42 apples"));  // expect: 42
  Serial.println(atoi("apples"));     // expect: 0
  char line[20];
  sprintf(line, "%03d|%5s|%x", 7, "ab", 255);
  Serial.println(line);               // expect: 007|   ab|ff
  itoa(-13, line, 10);
  Serial.println(line);               // expect: -13
  dtostrf(3.14159, 7, 2, line);
  Serial.println(line);               // expect:    3.14
}
void loop() {}
