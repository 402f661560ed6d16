// A comment is not closed.
void setup() {}
void loop() {}
/* the end                    // expect problem: program.openComment
