// A header that is there in class and whose functions are not run here.
#include <Wire.h>             // expect problem: program.notSupported feature=#include <Wire.h>
void setup() {}
void loop() {}
