// run 800 ms
// inputs [{"ms":20,"text":"ab"},{"ms":300,"text":"hello"}]
char buffer[10];
void setup() {
  Serial.begin(9600);
  Serial.setTimeout(50);
}
void serialEvent() {
  int n = Serial.readBytes(buffer, 9);
  buffer[n] = '\0';
  Serial.print(n);
  Serial.print(' ');
  Serial.println(buffer);
}
void loop() {}
