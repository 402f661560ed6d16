// run 1200 ms
// inputs [{"ms":30,"text":"12"},{"ms":100,"text":"34#"},{"ms":400,"text":"9999#"},{"ms":600,"text":"*1234#"}]
const char code[] = "1234";
char typed[sizeof(code)];
byte at = 0;
byte wrong = 0;
void reset() {
  memset(typed, 0, sizeof(typed));
  at = 0;
}
void setup() {
  Serial.begin(9600);
  pinMode(LED_BUILTIN, OUTPUT);
  reset();
}
void loop() {
  int c = Serial.read();
  if (c < 0) return;
  if (c == '*') { reset(); Serial.println("cleared"); }
  else if (c == '#') {
    if (strcmp(typed, code) == 0) {
      Serial.println("open");
      digitalWrite(LED_BUILTIN, HIGH);
    } else {
      wrong += 1;
      Serial.print("wrong ");
      Serial.println(wrong);
      digitalWrite(LED_BUILTIN, LOW);
    }
    reset();
  } else if (isDigit(c) && at < sizeof(typed) - 1) {
    typed[at] = c;
    at++;
  }
}
