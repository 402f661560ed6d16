// Parameters at the end may have values of their own.
int sum(int a, int b = 10, int c = 100);
void setup() {
  Serial.begin(115200);
  Serial.println(sum(1));           // expect: 111
  Serial.println(sum(1, 2));        // expect: 103
  Serial.println(sum(1, 2, 3));     // expect: 6
}
void loop() {}
int sum(int a, int b, int c) { return a + b + c; }
