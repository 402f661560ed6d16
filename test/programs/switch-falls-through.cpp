// Without break the next case runs too.
void setup() {
  Serial.begin(115200);
  int n = 2;
  switch (n) {
    case 1:
      Serial.println("one");
    case 2:
      Serial.println("two");      // expect: two
    case 3:
      Serial.println("three");    // expect: three
      break;
    default:
      Serial.println("other");
  }
  switch (9) {
    case 1: Serial.println("one"); break;
    default: Serial.println("none of them");  // expect: none of them
  }
  switch ('b') {
    case 'a': Serial.println("a"); break;
    case 'b': Serial.println("b"); break;     // expect: b
  }
}
void loop() {}
