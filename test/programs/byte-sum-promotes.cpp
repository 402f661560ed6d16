// Two bytes are added as int: nothing is lost until the result is stored in a byte.
void setup() {
  Serial.begin(115200);
  byte a = 200, b = 100;
  Serial.println(a + b);      // expect: 300
  byte sum = a + b;
  Serial.println(sum);        // expect: 44
  int average = (a + b) / 2;
  Serial.println(average);    // expect: 150
  Serial.println(~a);         // expect: -201
  byte inverted = ~a;
  Serial.println(inverted);   // expect: 55
}
void loop() {}
