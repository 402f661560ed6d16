// A function that comes to its end without return has no result to use.
int readIt() {
  int v = analogRead(A0);
  v = v / 4;
}                             // expect problem: program.noReturn
void setup() {
  Serial.begin(115200);
  readIt();
  Serial.println("unused is fine");   // expect: unused is fine
  int x = readIt();
}
void loop() {}
// expect broken at 2: program.noResult
