// Shifting an int to the left loses what leaves its 16 bits; a long must be said.
void setup() {
  Serial.begin(115200);
  int one = 1;
  Serial.println(one << 15);        // expect: -32768
  Serial.println((long)one << 15);  // expect: 32768
  Serial.println(1UL << 31);        // expect: 2147483648
  int n = 20;
  Serial.println(1L << n);          // expect: 1048576
  int minus = -16;
  Serial.println(minus >> 2);       // expect: -4
  unsigned int big = 0xFFF0;
  Serial.println(big >> 2);         // expect: 16380
}
void loop() {}
