// At 9600 baud a character takes a millisecond; once the buffer of 64 is full, print waits.
// run 2000 ms
void setup() {
  Serial.begin(9600);
  unsigned long start = millis();
  for (int i = 0; i < 60; i++) Serial.print('.');
  unsigned long quick = millis() - start;
  for (int i = 0; i < 140; i++) Serial.print('.');
  unsigned long slow = millis() - start;
  Serial.println();                                // expect: ........................................................................................................................................................................................................
  Serial.println(quick <= 2);                      // expect: 1
  Serial.println(slow >= 139 && slow <= 143);      // expect: 1
}
void loop() {}
