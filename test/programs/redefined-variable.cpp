// A name can be given once in a block.
void setup() {
  int x = 1;
  int x = 2;                  // expect problem: program.redefined name=x firstLine=3
}
void loop() {}
