// A float that does not fit an int is cut by way of 32 bits; beyond those it is undefined, and the chip gives what stands here.
volatile float f;
void setup() {
  Serial.begin(115200);
  f = 40000.0;
  Serial.println((int)f);             // expect: -25536
  f = 70000.0;
  Serial.println((unsigned int)f);    // expect: 4464
  f = -1.0;
  Serial.println((unsigned int)f);    // expect: 65535
  Serial.println((unsigned long)f);   // expect: 4294967295
  f = 300.7;
  byte b = f;
  Serial.println(b);                  // expect: 44
  f = 3e9;
  Serial.println((long)f);            // expect: -2147483648
  Serial.println((unsigned long)f);   // expect: 3000000000
  f = 1e10;
  Serial.println((int)f);             // expect: 0
  Serial.println((unsigned long)f);   // expect: 0
}
void loop() {}
