// Commands by letter.
int value = 0;
void act(char c) {
  switch (c) {
    case '+': value++; break;
    case '-': value--; break;
    case '0' ... '9': value = c - '0'; break;
    default: value = -1;
  }
}
void setup() {}
void loop() {}
// expect problem at 7: program.expected
