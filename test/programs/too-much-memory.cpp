// The chip has 2048 bytes of RAM: 1200 int do not fit.
int history[1200];
void setup() {}
void loop() { history[0]++; }
// expect problem at 4: program.memoryNeeded
