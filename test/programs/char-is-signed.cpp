// A char is never 255, a byte never -1.
void setup() {
  Serial.begin(115200);
  char c = 255;               // expect problem: program.numberChanges
  Serial.println(c == 255);   // expect: 0
  Serial.println(c == -1);    // expect: 1
  byte b = -1;
  Serial.println(b == -1);    // expect: 0
  Serial.println(b == 255);   // expect: 1
  byte start = 10;
  byte end = 5;
  Serial.println(end - start < 0);        // expect: 1
  Serial.println((byte)(end - start));    // expect: 251
}
void loop() {}
