// An array needs a size or values.
int list[];                   // expect problem: program.unknownSize name=list
void setup() {}
void loop() {}
