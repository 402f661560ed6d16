// A String that grows without end fills the RAM.
String all = "";
void setup() {}
void loop() {
  all += "another line of the log\n";   // expect broken: program.memoryFull
}
