// int in front makes a new variable: the global one stays 0.
int total = 0;
void add(int n) {
  int total = n;
}
void setup() {
  Serial.begin(115200);
  add(5);
  Serial.println(total);      // expect: 0
}
void loop() {}
