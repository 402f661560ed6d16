// What #if leaves out may be anything.
#if 0
Don't read this: it isn't C++ “at all”.
#endif
void setup() {}
void loop() {}
