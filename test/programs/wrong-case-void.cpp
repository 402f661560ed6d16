// Void is no type.
void setup() {}
Void loop() {}                // expect problem: program.unknownType name=Void near=void
