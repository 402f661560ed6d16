// run 1500 ms
// inputs [{"ms":50,"text":"led on\n"},{"ms":150,"text":"set 9 99\n"},{"ms":300,"text":"add 2 -3\n"},{"ms":400,"text":"led off\n"},{"ms":700,"text":"what\n"}]
char line[24];
byte used = 0;
void perform(char *text) {
  char *word = strtok(text, " ");
  if (word == NULL) return;
  if (strcmp(word, "led") == 0) {
    char *arg = strtok(NULL, " ");
    digitalWrite(13, arg != NULL && !strcmp(arg, "on"));
    Serial.println("ok");
  } else if (!strcmp(word, "set")) {
    int pin = atoi(strtok(NULL, " "));
    int value = atoi(strtok(NULL, " "));
    analogWrite(pin, constrain(value, 0, 255));
    Serial.print("pin ");
    Serial.print(pin);
    Serial.print('=');
    Serial.println(value);
  } else if (!strcmp(word, "add")) {
    long sum = atol(strtok(NULL, " ")) + atol(strtok(NULL, " "));
    Serial.println(sum);
  } else {
    Serial.print("unknown: ");
    Serial.println(word);
  }
}
void setup() {
  Serial.begin(9600);
  pinMode(13, OUTPUT);
}
void loop() {
  while (Serial.available() > 0) {
    char c = Serial.read();
    if (c == '\n') {
      line[used] = '\0';
      perform(line);
      used = 0;
    } else if (used < sizeof(line) - 1) {
      line[used++] = c;
    }
  }
}
