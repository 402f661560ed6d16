// A macro is text: without brackets it falls apart.
#define DOUBLE(x) x + x
#define GOOD(x) ((x) + (x))
#define SIZE 3
#define LENGTH SIZE + 1
int list[SIZE] = {1, 2, 3};
void setup() {
  Serial.begin(115200);
  Serial.println(DOUBLE(2) * 3);      // expect: 8
  Serial.println(GOOD(2) * 3);        // expect: 12
  Serial.println(LENGTH * 2);         // expect: 5
#ifdef SIZE
  Serial.println("known");            // expect: known
#else
  Serial.println("unknown");
#endif
#if SIZE > 5
  Serial.println("large");
#elif SIZE == 3
  Serial.println("three");            // expect: three
#endif
}
void loop() {}
