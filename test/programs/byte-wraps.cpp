// byte holds 0..255 and wraps; char is signed.
void setup() {
  Serial.begin(115200);
  byte a = 255;
  a++;
  Serial.println(a);          // expect: 0
  byte b = 0;
  b--;
  Serial.println(b);          // expect: 255
  byte c = 300;               // expect problem: program.numberChanges
  Serial.println(c);          // expect: 44
  char d = 200;               // expect problem: program.numberChanges
  int e = d;
  Serial.println(e);          // expect: -56
}
void loop() {}
