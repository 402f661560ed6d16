// break leaves a loop or a switch.
void setup() {
  break;                      // expect problem: program.outside found=break
}
void loop() {}
