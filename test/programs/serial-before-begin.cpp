// What is printed before begin is lost.
void setup() {
  Serial.println("lost");
  Serial.begin(9600);
  Serial.println("seen");           // expect: seen
}
void loop() {}
