// Four values do not fit into three places.
int list[3] = {1, 2, 3, 4};   // expect problem: program.tooManyValues most=3 found=4
void setup() {}
void loop() {}
