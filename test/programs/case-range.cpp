// GCC takes ranges of cases; a blank must stand before the dots.
const char *kind(char c) {
  switch (c) {
    case '0' ... '9': return "digit";
    case 'a' ... 'f':
    case 'A' ... 'F': return "hex";
    default: return "other";
  }
}
void setup() {
  Serial.begin(115200);
  Serial.println(kind('7'));    // expect: digit
  Serial.println(kind('c'));    // expect: hex
  Serial.println(kind('g'));    // expect: other
}
void loop() {}
