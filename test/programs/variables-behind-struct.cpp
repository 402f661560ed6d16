// A struct or enum may have variables right behind its brace, and need no name.
struct Point {
  int x;
  int y;
} start = {3, 4}, ends[2];
struct {
  byte red;
  byte green;
} colour;
enum { WAITING, RUNNING } state = RUNNING;
void setup() {
  Serial.begin(115200);
  ends[1] = start;
  ends[1].x++;
  Serial.println(ends[1].x * 10 + start.x);   // expect: 43
  colour.green = 200;
  Serial.println(colour.red + colour.green);  // expect: 200
  Serial.println(state == RUNNING);           // expect: 1
}
void loop() {}
