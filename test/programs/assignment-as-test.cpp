// if (x = 10) assigns and is true.
void setup() {
  Serial.begin(115200);
  int x = 3;
  if (x = 10) {               // expect problem: program.assignmentAsTest
    Serial.println("yes");    // expect: yes
  }
  Serial.println(x);          // expect: 10
  if ((x = 0)) Serial.println("no");
  Serial.println(x);          // expect: 0
}
void loop() {}
