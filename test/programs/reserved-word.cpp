// Some words belong to the language.
int switch = 2;               // expect problem: program.reservedWord name=switch
void setup() {}
void loop() {}
