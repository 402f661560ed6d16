// int has 16 bits and wraps (sizes and examples checked with avr-g++ static_assert).
void setup() {
  Serial.begin(115200);
  int a = 32767;
  a = a + 1;
  Serial.println(a);          // expect: -32768
  int b = -32768;
  b--;
  Serial.println(b);          // expect: 32767
  int c = 40000;              // expect problem: program.numberChanges
  Serial.println(c);          // expect: -25536
  int d = 300;
  Serial.println(d * d);      // expect: 24464
}
void loop() {}
