// A function has brackets behind its name.
void setup() {}
void loop {                   // expect problem: program.expected expected=( found={
  delay(10);
}
