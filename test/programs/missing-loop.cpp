// Both functions must be there.
void setup() {}
// expect problem at 2: program.missingFunction name=loop
