// "5" + "7" would add two addresses; only a String joins.
void setup() {
  Serial.println("5" + "7");  // expect problem: program.badOperands operator=+
}
void loop() {}
