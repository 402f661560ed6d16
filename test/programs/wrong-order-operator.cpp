// => is no operator.
int x = 1;
void setup() {
  if (x => 3) x = 0;          // expect problem: program.expected expected=expression found=>
}
void loop() {}
