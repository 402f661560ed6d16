// A call outside every function.
pinMode(13, OUTPUT);          // expect problem: program.outside found=pinMode
void setup() {}
void loop() {}
