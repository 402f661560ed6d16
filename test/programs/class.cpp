// A class with constructor, methods and private fields; each object has its own.
class Counter {
  public:
    Counter(int start, int by) : count(start), step(by) {}
    void next() { count += step; }
    int value() const { return count; }
    Counter &twice() { next(); next(); return *this; }
  private:
    int count;
    int step;
};
Counter ones(0, 1);
Counter tens(100, 10);
void setup() {
  Serial.begin(115200);
  ones.next();
  tens.next();
  tens.next();
  Serial.println(ones.value());       // expect: 1
  Serial.println(tens.value());       // expect: 120
  Serial.println(ones.twice().value());  // expect: 3
  Counter local(5, 5);
  local.twice().next();
  Serial.println(local.value());      // expect: 20
}
void loop() {}
