// memcpy counts bytes: six ints are twelve of them, and the array ends before.
int from[6] = {1, 2, 3, 4, 5, 6};
int to[4];
void setup() {
  memcpy(to, from, sizeof(from));   // expect broken: program.indexOutside 5 4
}
void loop() {}
