// Start, time, pins, sound and chance of the reference board.
#include "board.h"

#include <avr/interrupt.h>
#include <avr/io.h>
#include <util/delay.h>

// Time: timer 0 counts at a 64th of 16 MHz and overflows every 1024 µs; every 24 µs that a millisecond falls short are added up.
static volatile unsigned long overflows, milliseconds;
static uint8_t fraction;

ISR(TIMER0_OVF_vect) {
  unsigned long m = milliseconds;
  uint8_t f = fraction + 3;  // 24 µs in eighths
  m += 1;
  if (f >= 125) {
    f -= 125;
    m += 1;
  }
  fraction = f;
  milliseconds = m;
  overflows++;
}

unsigned long millis() {
  uint8_t before = SREG;
  cli();
  unsigned long m = milliseconds;
  SREG = before;
  return m;
}

unsigned long micros() {
  uint8_t before = SREG;
  cli();
  unsigned long m = overflows;
  uint8_t t = TCNT0;
  if ((TIFR0 & _BV(TOV0)) && t < 255) m++;
  SREG = before;
  return ((m << 8) + t) * 4;
}

void delay(unsigned long ms) {
  uint32_t start = micros();
  while (ms > 0) {
    while (ms > 0 && (micros() - start) >= 1000) {
      ms--;
      start += 1000;
    }
  }
}

void delayMicroseconds(unsigned int us) {
  // A round takes four cycles; the call and these tests take about a microsecond.
  if (us <= 1) return;
  us = (us << 2) - 5;
  __asm__ __volatile__("1: sbiw %0,1\n\tbrne 1b" : "=w"(us) : "0"(us));
}

// Pins: D0..D7 are port D, D8..D13 port B, A0..A5 port C.
static const uint8_t PROGMEM ports[] = {4, 4, 4, 4, 4, 4, 4, 4, 2, 2, 2, 2, 2, 2, 3, 3, 3, 3, 3, 3};
static const uint8_t PROGMEM masks[] = {1, 2, 4, 8, 16, 32, 64, 128, 1, 2, 4, 8, 16, 32, 1, 2, 4, 8, 16, 32};
// Which compare unit a pin hangs on: 1 OC0A, 2 OC0B, 3 OC1A, 4 OC1B, 5 OC2A, 6 OC2B.
static const uint8_t PROGMEM units[] = {0, 0, 0, 6, 0, 2, 1, 0, 0, 3, 4, 5, 0, 0, 0, 0, 0, 0, 0, 0};

static volatile uint8_t *pinRegister(uint8_t port) { return port == 2 ? &PINB : port == 3 ? &PINC : &PIND; }
static volatile uint8_t *modeRegister(uint8_t port) { return port == 2 ? &DDRB : port == 3 ? &DDRC : &DDRD; }
static volatile uint8_t *levelRegister(uint8_t port) { return port == 2 ? &PORTB : port == 3 ? &PORTC : &PORTD; }

static void stopPulses(uint8_t unit) {
  switch (unit) {
    case 1: TCCR0A &= ~_BV(COM0A1); break;
    case 2: TCCR0A &= ~_BV(COM0B1); break;
    case 3: TCCR1A &= ~_BV(COM1A1); break;
    case 4: TCCR1A &= ~_BV(COM1B1); break;
    case 5: TCCR2A &= ~_BV(COM2A1); break;
    case 6: TCCR2A &= ~_BV(COM2B1); break;
  }
}

void pinMode(uint8_t pin, uint8_t mode) {
  if (pin > 19) return;
  uint8_t mask = pgm_read_byte(masks + pin), port = pgm_read_byte(ports + pin);
  volatile uint8_t *modes = modeRegister(port), *levels = levelRegister(port);
  uint8_t before = SREG;
  cli();
  if (mode == OUTPUT) *modes |= mask;
  else {
    *modes &= ~mask;
    if (mode == INPUT_PULLUP) *levels |= mask;
    else *levels &= ~mask;
  }
  SREG = before;
}

void digitalWrite(uint8_t pin, uint8_t level) {
  if (pin > 19) return;
  uint8_t mask = pgm_read_byte(masks + pin), port = pgm_read_byte(ports + pin), unit = pgm_read_byte(units + pin);
  if (unit) stopPulses(unit);
  volatile uint8_t *levels = levelRegister(port);
  uint8_t before = SREG;
  cli();
  if (level == LOW) *levels &= ~mask;
  else *levels |= mask;
  SREG = before;
}

int digitalRead(uint8_t pin) {
  if (pin > 19) return LOW;
  uint8_t mask = pgm_read_byte(masks + pin), port = pgm_read_byte(ports + pin), unit = pgm_read_byte(units + pin);
  if (unit) stopPulses(unit);
  return *pinRegister(port) & mask ? HIGH : LOW;
}

static uint8_t reference = DEFAULT;
int analogRead(uint8_t pin) {
  if (pin >= 14) pin -= 14;
  ADMUX = reference << 6 | (pin & 7);
  ADCSRA |= _BV(ADSC);
  while (ADCSRA & _BV(ADSC)) {
  }
  return ADC;
}

void analogWrite(uint8_t pin, int value) {
  pinMode(pin, OUTPUT);
  uint8_t unit = pin > 19 ? 0 : pgm_read_byte(units + pin);
  if (value == 0 || (unit == 0 && value < 128)) digitalWrite(pin, LOW);
  else if (value == 255 || unit == 0) digitalWrite(pin, HIGH);
  else {
    switch (unit) {
      case 1: TCCR0A |= _BV(COM0A1); OCR0A = value; break;
      case 2: TCCR0A |= _BV(COM0B1); OCR0B = value; break;
      case 3: TCCR1A |= _BV(COM1A1); OCR1A = value; break;
      case 4: TCCR1A |= _BV(COM1B1); OCR1B = value; break;
      case 5: TCCR2A |= _BV(COM2A1); OCR2A = value; break;
      case 6: TCCR2A |= _BV(COM2B1); OCR2B = value; break;
    }
  }
}

// Sound: timer 2 calls at twice the pitch, and each call turns the pin round.
static volatile long turns;
static volatile uint8_t *soundLevels;
static uint8_t soundMask, soundPin = 255;

static void stopSound() {
  TIMSK2 &= ~_BV(OCIE2A);
  TCCR2A = _BV(WGM20);
  TCCR2B = _BV(CS22);
  OCR2A = 0;
}

ISR(TIMER2_COMPA_vect) {
  if (turns == 0) {
    stopSound();
    *soundLevels &= ~soundMask;
    soundPin = 255;
    return;
  }
  *soundLevels ^= soundMask;
  if (turns > 0) turns--;
}

void tone(uint8_t pin, unsigned int hertz, unsigned long ms) {
  if (pin > 19 || (soundPin != 255 && soundPin != pin)) return;
  pinMode(pin, OUTPUT);
  if (hertz == 0) return noTone(pin);
  static const uint16_t PROGMEM divisors[] = {1, 8, 32, 64, 128, 256, 1024};
  uint8_t bits = 1;
  uint32_t top = F_CPU / hertz / 2 - 1;
  while (top > 255 && bits < 7) {
    top = F_CPU / hertz / 2 / pgm_read_word(divisors + bits) - 1;
    bits++;
  }
  TIMSK2 &= ~_BV(OCIE2A);
  soundMask = pgm_read_byte(masks + pin);
  soundLevels = levelRegister(pgm_read_byte(ports + pin));
  soundPin = pin;
  turns = ms > 0 ? 2 * hertz * ms / 1000 : -1;
  TCCR2A = _BV(WGM21);
  TCCR2B = bits;
  OCR2A = top;
  TCNT2 = 0;
  TIMSK2 |= _BV(OCIE2A);
}

void noTone(uint8_t pin) {
  if (pin == soundPin) {
    stopSound();
    soundPin = 255;
  }
  digitalWrite(pin, LOW);
}

unsigned long pulseIn(uint8_t pin, uint8_t level, unsigned long patience) {
  unsigned long start = micros();
  while (digitalRead(pin) == level)
    if (micros() - start > patience) return 0;
  while (digitalRead(pin) != level)
    if (micros() - start > patience) return 0;
  unsigned long from = micros();
  while (digitalRead(pin) == level)
    if (micros() - start > patience) return 0;
  return micros() - from;
}

void shiftOut(uint8_t data, uint8_t clock, uint8_t order, uint8_t value) {
  for (uint8_t i = 0; i < 8; i++) {
    if (order == LSBFIRST) digitalWrite(data, !!(value & (1 << i)));
    else digitalWrite(data, !!(value & (1 << (7 - i))));
    digitalWrite(clock, HIGH);
    digitalWrite(clock, LOW);
  }
}

uint8_t shiftIn(uint8_t data, uint8_t clock, uint8_t order) {
  uint8_t value = 0;
  for (uint8_t i = 0; i < 8; i++) {
    digitalWrite(clock, HIGH);
    if (order == LSBFIRST) value |= digitalRead(data) << i;
    else value |= digitalRead(data) << (7 - i);
    digitalWrite(clock, LOW);
  }
  return value;
}

void analogReference(uint8_t mode) { reference = mode; }

static void (*onInterrupt[2])();
ISR(INT0_vect) { onInterrupt[0](); }
ISR(INT1_vect) { onInterrupt[1](); }

void attachInterrupt(uint8_t number, void (*run)(), int mode) {
  if (number > 1) return;
  onInterrupt[number] = run;
  uint8_t shift = number ? ISC10 : ISC00;
  EICRA = (EICRA & ~(3 << shift)) | (mode << shift);
  EIFR = _BV(number);
  EIMSK |= _BV(number);
}

void detachInterrupt(uint8_t number) {
  if (number < 2) EIMSK &= ~_BV(number);
}

long random(long most) { return most == 0 ? 0 : random() % most; }
long random(long least, long most) { return least >= most ? least : random(most - least) + least; }
void randomSeed(unsigned long seed) {
  if (seed != 0) srandom(seed);
}
long map(long x, long a, long b, long c, long d) { return (x - a) * (d - c) / (b - a) + c; }

int main() {
  // All timers at a 64th: timer 0 in fast mode for the clock and pins 5 and 6, the others phase-correct.
  TCCR0A = _BV(WGM01) | _BV(WGM00);
  TCCR0B = _BV(CS01) | _BV(CS00);
  TIMSK0 = _BV(TOIE0);
  TCCR1A = _BV(WGM10);
  TCCR1B = _BV(CS11) | _BV(CS10);
  TCCR2A = _BV(WGM20);
  TCCR2B = _BV(CS22);
  ADCSRA = _BV(ADEN) | _BV(ADPS2) | _BV(ADPS1) | _BV(ADPS0);
  sei();
  setup();
  for (;;) {
    loop();
    if (serialEvent && Serial.available()) serialEvent();
  }
}

// What C++ asks for around a static local that is made when it is first reached.
extern "C" int __cxa_guard_acquire(uint64_t *done) { return !*(uint8_t *)done; }
extern "C" void __cxa_guard_release(uint64_t *done) { *(uint8_t *)done = 1; }
extern "C" void __cxa_guard_abort(uint64_t *) {}
