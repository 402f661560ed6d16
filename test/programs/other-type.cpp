// Nor with another type.
int counter = 0;
long counter = 0;             // expect problem: program.otherType name=counter first=int found=long
void setup() {}
void loop() {}
