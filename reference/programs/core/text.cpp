// The reference board's serial port: two buffers of 64, interrupts at both ends, and how numbers are written.
#include <avr/interrupt.h>
#include <avr/io.h>

#include "board.h"

TextPort Serial;

static volatile uint8_t outgoing[64], incoming[64];
static volatile uint8_t outHead, outTail, inHead, inTail;
static bool isOpen, hasSent;

ISR(USART_UDRE_vect) {
  UDR0 = outgoing[outTail];
  outTail = (outTail + 1) & 63;
  if (outHead == outTail) UCSR0B &= ~_BV(UDRIE0);
}

ISR(USART_RX_vect) {
  uint8_t c = UDR0;
  uint8_t next = (inHead + 1) & 63;
  if (next == inTail) return;
  incoming[inHead] = c;
  inHead = next;
}

void TextPort::begin(unsigned long baud) {
  uint16_t divider = (F_CPU / 4 / baud - 1) / 2;
  UCSR0A = _BV(U2X0);
  if (baud == 57600 || divider > 4095) {
    UCSR0A = 0;
    divider = (F_CPU / 8 / baud - 1) / 2;
  }
  UBRR0 = divider;
  UCSR0C = _BV(UCSZ01) | _BV(UCSZ00);
  UCSR0B = _BV(RXEN0) | _BV(TXEN0) | _BV(RXCIE0);
  isOpen = true;
}

size_t TextPort::write(uint8_t c) {
  if (!isOpen) return 0;
  hasSent = true;
  if (outHead == outTail && (UCSR0A & _BV(UDRE0))) {
    UCSR0A |= _BV(TXC0);
    UDR0 = c;
    return 1;
  }
  uint8_t next = (outHead + 1) & 63;
  while (next == outTail) {
  }
  outgoing[outHead] = c;
  uint8_t before = SREG;
  cli();
  outHead = next;
  UCSR0B |= _BV(UDRIE0);
  SREG = before;
  return 1;
}

size_t TextPort::write(const char *text) {
  size_t n = 0;
  if (text)
    for (; *text; n++) write((uint8_t)*text++);
  return n;
}

size_t TextPort::print(const FlashText *text) {
  PGM_P p = reinterpret_cast<PGM_P>(text);
  size_t n = 0;
  for (; uint8_t c = pgm_read_byte(p); p++, n++) write(c);
  return n;
}

size_t TextPort::print(unsigned long n, int base) {
  if (base == 0) return write((uint8_t)n);
  char digits[33];
  char *p = digits + 32;
  *p = 0;
  do {
    uint8_t d = n % base;
    n /= base;
    *--p = d < 10 ? '0' + d : 'A' + d - 10;
  } while (n);
  return write(p);
}

size_t TextPort::print(long n, int base) {
  if (base == 0) return write((uint8_t)n);
  if (base == 10 && n < 0) return write((uint8_t)'-') + print(-(unsigned long)n, 10);
  return print((unsigned long)n, base);
}

// Half of the last digit is added, the whole part cut off, then one digit after the other.
size_t TextPort::print(double x, int digits) {
  if (isnan(x)) return write("nan");
  if (isinf(x)) return write("inf");
  if (x > 4294967040.0 || x < -4294967040.0) return write("ovf");
  size_t n = 0;
  if (x < 0.0) {
    n += write((uint8_t)'-');
    x = -x;
  }
  double half = 0.5;
  for (uint8_t i = 0; i < digits; i++) half /= 10.0;
  x += half;
  unsigned long whole = (unsigned long)x;
  double rest = x - (double)whole;
  n += print(whole, 10);
  if (digits > 0) n += write((uint8_t)'.');
  while (digits-- > 0) {
    rest *= 10.0;
    unsigned int d = (unsigned int)rest;
    n += print((unsigned long)d, 10);
    rest -= d;
  }
  return n;
}

void TextPort::end() {
  flush();
  UCSR0B = 0;
  isOpen = false;
  inHead = inTail;
}

size_t TextPort::write(const uint8_t *bytes, size_t count) {
  for (size_t i = 0; i < count; i++) write(bytes[i]);
  return count;
}

int TextPort::available() { return (64 + inHead - inTail) & 63; }
int TextPort::peek() { return inHead == inTail ? -1 : incoming[inTail]; }

int TextPort::read() {
  if (inHead == inTail) return -1;
  uint8_t c = incoming[inTail];
  inTail = (inTail + 1) & 63;
  return c;
}

void TextPort::flush() {
  if (!hasSent) return;
  while ((UCSR0B & _BV(UDRIE0)) || !(UCSR0A & _BV(TXC0))) {
  }
}

int TextPort::waitForOne() {
  unsigned long start = millis();
  do {
    int c = peek();
    if (c >= 0) return c;
  } while (millis() - start < patience);
  return -1;
}

long TextPort::parseInt() {
  int c = waitForOne();
  while (c >= 0 && c != '-' && !isdigit(c)) {
    read();
    c = waitForOne();
  }
  bool isNegative = c == '-';
  long value = 0;
  if (isNegative) {
    read();
    c = waitForOne();
  }
  while (c >= 0 && isdigit(c)) {
    value = value * 10 + c - '0';
    read();
    c = waitForOne();
  }
  return isNegative ? -value : value;
}

float TextPort::parseFloat() {
  int c = waitForOne();
  while (c >= 0 && c != '-' && c != '.' && !isdigit(c)) {
    read();
    c = waitForOne();
  }
  bool isNegative = c == '-', isBehind = false;
  float value = 0, weight = 1;
  if (isNegative) {
    read();
    c = waitForOne();
  }
  while (c >= 0 && (isdigit(c) || (c == '.' && !isBehind))) {
    if (c == '.') isBehind = true;
    else {
      value = value * 10 + (c - '0');
      if (isBehind) weight *= 0.1f;
    }
    read();
    c = waitForOne();
  }
  return (isNegative ? -value : value) * weight;
}

String TextPort::readString() {
  String text;
  while (waitForOne() >= 0) text += (char)read();
  return text;
}

String TextPort::readStringUntil(char end) {
  String text;
  while (waitForOne() >= 0) {
    char c = read();
    if (c == end) break;
    text += c;
  }
  return text;
}

size_t TextPort::readBytes(char *to, size_t count) {
  size_t n = 0;
  while (n < count && waitForOne() >= 0) to[n++] = read();
  return n;
}

size_t TextPort::readBytesUntil(char end, char *to, size_t count) {
  size_t n = 0;
  while (n < count && waitForOne() >= 0) {
    char c = read();
    if (c == end) break;
    to[n++] = c;
  }
  return n;
}
