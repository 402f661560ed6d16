// A semicolon behind a #define becomes part of every use.
#define WAIT 500;
void setup() {
  delay(WAIT);                // expect problem: program.expected
}
void loop() {}
