// A table of functions.
int plus(int a, int b) { return a + b; }
int minus(int a, int b) { return a - b; }
int (*operation)(int, int) = plus;
typedef void (*Action)();
void first() { Serial.println("first"); }
void second() { Serial.println("second"); }
Action actions[] = {first, second};
void setup() {
  Serial.begin(115200);
  Serial.println(operation(5, 3));    // expect: 8
  operation = minus;
  Serial.println(operation(5, 3));    // expect: 2
  actions[1]();                       // expect: second
  for (int i = 0; i < 1; i++) actions[i]();  // expect: first
}
void loop() {}
