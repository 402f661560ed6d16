// Constants are there before anything is computed; the rest follows in the order of the file.
extern int later;
int now = later + 1;
int computed();
int first = computed();
int later = 41;
int second = first + 1;
int computed() { return now; }
void setup() {
  Serial.begin(115200);
  Serial.println(now);        // expect: 42
  Serial.println(first);      // expect: 42
  Serial.println(second);     // expect: 43
}
void loop() {}
