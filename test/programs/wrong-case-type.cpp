// And in types.
Int count = 3;                // expect problem: program.unknownType name=Int near=int
void setup() {}
void loop() {}
