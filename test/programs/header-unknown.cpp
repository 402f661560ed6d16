// A header that is not there.
#include <Servi.h>            // expect problem: program.unknownHeader name=Servi.h near=Servo.h
void setup() {}
void loop() {}
