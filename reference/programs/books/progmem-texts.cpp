// run 400 ms
const char text0[] PROGMEM = "Ebb tide";
const char text1[] PROGMEM = "Slack water";
const char text2[] PROGMEM = "Flood tide";
const char *const texts[] PROGMEM = {text0, text1, text2};
char buffer[20];
const int depths[] PROGMEM = {120, -4, 3000};
const long big[] PROGMEM = {100000L, -7};
const float ratio[] PROGMEM = {0.5, 2.75};
void setup() {
  Serial.begin(115200);
  for (byte i = 0; i < 3; i++) {
    strcpy_P(buffer, (char *)pgm_read_word(&(texts[i])));
    Serial.print(buffer);
    Serial.print(": ");
    Serial.print((int)pgm_read_word(&depths[i]));
    Serial.print(" (");
    Serial.print(strlen(buffer));
    Serial.println(")");
  }
  Serial.println((long)pgm_read_dword(big + 1));
  Serial.println(pgm_read_float(&ratio[1]));
}
void loop() {}
