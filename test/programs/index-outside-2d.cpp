// The second index is checked against its own length, though the cell would still lie in the array.
byte picture[3][8];
void setup() {
  int column = 9;
  picture[1][column] = 1;     // expect broken: program.indexOutside 9 8
}
void loop() {}
