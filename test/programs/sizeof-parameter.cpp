// An array that is handed over is a pointer: its size is 2.
int sizeInside(int list[]) { return sizeof(list); }
void setup() {
  Serial.begin(115200);
  int list[10];
  Serial.println(sizeof(list));       // expect: 20
  Serial.println(sizeInside(list));   // expect: 2
}
void loop() {}
