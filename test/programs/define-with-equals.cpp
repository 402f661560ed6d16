// A macro is no assignment: the sign becomes part of every use.
#define LED = 13
void setup() {
  pinMode(LED, OUTPUT);       // expect problem: program.expected expected=expression found==
}
void loop() {}
