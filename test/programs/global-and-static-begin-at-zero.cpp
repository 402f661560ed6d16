// Globals and statics begin at 0, also arrays and structs.
int g;
float f;
int list[3];
struct P { int x; long y; } p;
String s;
int counted() { static int n; return ++n; }
void setup() {
  Serial.begin(115200);
  Serial.println(g + list[2] + p.x + p.y);  // expect: 0
  Serial.println(f);                        // expect: 0.00
  Serial.println(s.length());               // expect: 0
  counted();
  Serial.println(counted());                // expect: 2
}
void loop() {}
