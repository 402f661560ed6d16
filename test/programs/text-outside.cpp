// A char array needs a place for the closing 0.
char word5[5] = "abcd";
void setup() {
  Serial.begin(115200);
  Serial.println(word5);      // expect: abcd
  strcpy(word5, "abcde");     // expect broken: program.indexOutside 5 5
}
void loop() {}
