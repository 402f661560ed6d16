// Functions may stand below their use: the class's tools put prototypes above.
void setup() {
  Serial.begin(115200);
  Serial.println(twice(21));        // expect: 42
  Serial.println(area(3));          // expect: 9
  Serial.println(area(3, 4));       // expect: 12
  say("done");                      // expect: done
}
void loop() {}
int twice(int n) { return 2 * n; }
int area(int a) { return a * a; }
int area(int a, int b) { return a * b; }
void say(const char *text) { Serial.println(text); }
