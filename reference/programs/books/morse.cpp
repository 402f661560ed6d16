// run 6000 ms
const char *letters[] = {
  ".-", "-...", "-.-.", "-..", ".", "..-.", "--.", "....", "..",
  ".---", "-.-", ".-..", "--", "-.", "---", ".--.", "--.-", ".-.",
  "...", "-", "..-", "...-", ".--", "-..-", "-.--", "--.."
};
const unsigned int unit = 60;
void flash(unsigned int length) {
  digitalWrite(LED_BUILTIN, HIGH);
  delay(length);
  digitalWrite(LED_BUILTIN, LOW);
  delay(unit);
}
void send(char c) {
  c = toupper(c);
  if (c == ' ') { delay(4 * unit); return; }
  if (c < 'A' || c > 'Z') return;
  for (const char *p = letters[c - 'A']; *p; p++) flash(*p == '.' ? unit : 3 * unit);
  delay(2 * unit);
}
void setup() { pinMode(LED_BUILTIN, OUTPUT); }
void loop() {
  const char message[] = "Sos, Tide";
  for (unsigned i = 0; i < strlen(message); i++) send(message[i]);
  delay(7 * unit);
}
