// %d takes the low half of a long, %ld all of it; %f is not linked in (avr-libc, vfprintf).
void setup() {
  Serial.begin(115200);
  char line[40];
  long big = 100000L;
  sprintf(line, "%ld", big);
  Serial.println(line);       // expect: 100000
  sprintf(line, "%d", big);
  Serial.println(line);       // expect: -31072
  sprintf(line, "%f", 1.5);
  Serial.println(line);       // expect: ?
  sprintf(line, "%u %c %%", 65535U, 'x');
  Serial.println(line);       // expect: 65535 x %
}
void loop() {}
