// A name cannot begin with a digit.
int 2pin = 2;                 // expect problem: program.expected expected=name found=2pin
void setup() {}
void loop() {}
