// The servo's header must be named.
Servo arm;                    // expect problem: program.unknownType name=Servo
void setup() {}
void loop() {}
