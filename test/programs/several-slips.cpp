// After a slip the reader finds its way again.
int a = 5                     // expect problem: program.expected expected=; found=int
int b = 6;
void setup() {
  pinMode(13, OUTPUT)         // expect problem: program.expected expected=; found=a
  a = b;
  if (a > 3 {                 // expect problem: program.expected expected=) found={
    b = 2;
  }
}
void loop() {
  a = ;                       // expect problem: program.expected expected=expression found=;
}
