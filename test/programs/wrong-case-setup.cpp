// Setup is another function than setup.
void Setup() {}
void loop() {}
// expect problem at 3: program.missingFunction name=setup near=Setup
