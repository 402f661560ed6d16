// How far one may shift is 0 to 15 for an int: beyond, the chip steps on until nothing is left; a small negative count does nothing.
volatile int value = 0x1234;
volatile int minus = -1000;
volatile unsigned int word1 = 0x8001;
volatile int n;
void setup() {
  Serial.begin(115200);
  n = 16;
  Serial.println(value << n);   // expect: 0
  Serial.println(minus >> n);   // expect: -1
  Serial.println(word1 >> n);   // expect: 0
  n = 100;
  Serial.println(value << n);   // expect: 0
  n = 128;
  Serial.println(value << n);   // expect: 0
  n = -5;
  Serial.println(value << n);   // expect: 4660
  n = 256;
  Serial.println(value << n);   // expect: 4660
}
void loop() {}
