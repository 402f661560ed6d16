// A function that is only promised cannot be called.
void later();
void setup() {
  later();                    // expect problem: program.missingBody name=later
}
void loop() {}
