// The chip's registers are not run; they are no typing error either.
void setup() {
  DDRB |= 1 << 5;             // expect problem: program.notSupported feature=DDRB
  PORTB = 0x20;               // expect problem: program.notSupported feature=PORTB
}
void loop() {}
