// loop stands there twice.
void setup() {}
void loop() {}
void loop() {}                // expect problem: program.redefined name=loop firstLine=3
