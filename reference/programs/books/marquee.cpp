// run 700 ms
const char message[] = "LOW TIDE AT NOON   ";
const int width = 8;
void setup() { Serial.begin(115200); }
void loop() {
  static unsigned int offset;
  char window[width + 1];
  for (int i = 0; i < width; i++) window[i] = message[(offset + i) % (sizeof(message) - 1)];
  window[width] = '\0';
  Serial.println(window);
  offset = (offset + 1) % (sizeof message - 1);
  delay(50);
}
