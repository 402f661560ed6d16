// What is not run is named before the start, each at its line.
template <class T> T twice(T x) { return x + x; }   // expect problem: program.notSupported feature=template
void setup() {
  int *p = new int[3];        // expect problem: program.notSupported feature=new
  long long big = 1;          // expect problem: program.notSupported feature=long long
  auto f = [](int x) { return x; };   // expect problem: program.notSupported feature=lambda
  goto end;                   // expect problem: program.notSupported feature=goto
}
void loop() {}
