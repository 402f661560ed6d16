// A directive begins with #.
include <Servo.h>             // expect problem: program.expected expected=;
void setup() {}
void loop() {}
