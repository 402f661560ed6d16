// A constant that belongs to a class.
class Bar {
  public:
    static const int width = 8;
    enum Mode { DOT, LINE };
    byte dots[width];
    Mode mode = LINE;
    int half() { return width / 2; }
};
Bar bar;
void setup() {
  Serial.begin(115200);
  Serial.println(Bar::width);         // expect: 8
  Serial.println(bar.half());         // expect: 4
  Serial.println(sizeof(bar.dots));   // expect: 8
  Serial.println(bar.mode == Bar::LINE);  // expect: 1
}
void loop() {}
