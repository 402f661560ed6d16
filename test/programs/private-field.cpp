// What is private cannot be used from outside.
class Door {
  int angle;
  public:
    void open() { angle = 90; }
};
Door door;
void setup() {
  door.open();
  door.angle = 5;             // expect problem: program.privateMember
}
void loop() {}
