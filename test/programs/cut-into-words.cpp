// strtok cuts a text into words and overwrites what divides them.
char line[] = "speed=42;angle=90";
void setup() {
  Serial.begin(115200);
  for (char *word1 = strtok(line, ";="); word1 != NULL; word1 = strtok(NULL, ";=")) {
    Serial.println(word1);
  }
  // expect: speed
  // expect: 42
  // expect: angle
  // expect: 90
  Serial.println(line);         // expect: speed
}
void loop() {}
