// A semicolon behind if leaves else alone.
int x = 1;
void setup() {
  if (x == 1); {              // expect problem: program.emptyBody
    x = 2;
  } else {                    // expect problem: program.elseWithoutIf
    x = 3;
  }
}
void loop() {}
