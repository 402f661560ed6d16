// -1 is no place of an array.
int history[4];
int at = 0;
void setup() {
  history[at - 1] = 7;        // expect broken: program.indexOutside -1 4
}
void loop() {}
