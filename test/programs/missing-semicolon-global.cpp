// Behind a global too.
int count = 0                 // expect problem: program.expected expected=; found=void
void setup() {}
void loop() {}
