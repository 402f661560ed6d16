// run 300 ms
struct Vec { float x, y; };
struct Matrix { float m[2][2]; };
Vec add(Vec a, Vec b) { return {a.x + b.x, a.y + b.y}; }
Vec operator_free(const Matrix &m, const Vec &v) {
  Vec r;
  r.x = m.m[0][0] * v.x + m.m[0][1] * v.y;
  r.y = m.m[1][0] * v.x + m.m[1][1] * v.y;
  return r;
}
Matrix rotation(float degrees) {
  float a = radians(degrees);
  Matrix r = {{{(float)cos(a), (float)-sin(a)}, {(float)sin(a), (float)cos(a)}}};
  return r;
}
void print(const char *name, Vec v) {
  Serial.print(name);
  Serial.print(v.x, 4);
  Serial.print(';');
  Serial.println(v.y, 4);
}
void setup() {
  Serial.begin(115200);
  Vec v = {3, 4}, w{1.5, -2};
  print("sum ", add(v, w));
  print("turned ", operator_free(rotation(30), v));
  Vec copy = v;
  copy.x = 9;
  print("still ", v);
  Vec *p = &copy;
  p->y = hypot(v.x, v.y);
  print("copy ", *p);
}
void loop() {}
