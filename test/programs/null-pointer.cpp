// A pointer that leads nowhere may not be followed.
int *target = NULL;
void setup() {
  *target = 5;                // expect broken: program.nullPointer
}
void loop() {}
