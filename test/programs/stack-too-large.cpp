// A large array inside a function lies on the stack.
int fill(int n) {
  int list[700];
  for (int i = 0; i < 700; i++) list[i] = n;
  return list[699];
}
int deeper(int n) {
  int more[400];
  more[0] = n;
  return fill(more[0]);       // expect broken: program.stackOverflow
}
void setup() {
  Serial.begin(115200);
  Serial.println(fill(1));    // expect: 1
  Serial.println(deeper(1));
}
void loop() {}
