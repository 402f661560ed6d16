// The board's functions for the reference runs: written for these tests, from the data sheet and what textbooks say of them.
//
// It stands in for what the class's tools link with every program, so that avr-gcc and simavr can judge our own run. It holds
// what the test programs use and nothing more.
#pragma once
#include <avr/interrupt.h>
#include <avr/pgmspace.h>
#include <ctype.h>
#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define HIGH 0x1
#define LOW 0x0
#define INPUT 0x0
#define OUTPUT 0x1
#define INPUT_PULLUP 0x2
#define LED_BUILTIN 13
#define PI 3.1415926535897932384626433832795
#define HALF_PI 1.5707963267948966192313216916398
#define TWO_PI 6.283185307179586476925286766559
#define DEG_TO_RAD 0.017453292519943295769236907684886
#define RAD_TO_DEG 57.295779513082320876798154814105
#define EXTERNAL 0
#define DEFAULT 1
#define INTERNAL 3
#define interrupts() sei()
#define noInterrupts() cli()
#define radians(x) ((x) * DEG_TO_RAD)
#define degrees(x) ((x) * RAD_TO_DEG)
#define LSBFIRST 0
#define MSBFIRST 1
#define CHANGE 1
#define FALLING 2
#define RISING 3
#define DEC 10
#define HEX 16
#define OCT 8
#define BIN 2

#include "bits.h"
#include "words.h"

#undef abs
#undef round
#define min(a, b) ((a) < (b) ? (a) : (b))
#define max(a, b) ((a) > (b) ? (a) : (b))
#define abs(x) ((x) > 0 ? (x) : -(x))
#define constrain(x, low, high) ((x) < (low) ? (low) : ((x) > (high) ? (high) : (x)))
#define round(x) ((x) >= 0 ? (long)((x) + 0.5) : (long)((x)-0.5))
#define sq(x) ((x) * (x))
#define lowByte(x) ((uint8_t)((x)&0xff))
#define highByte(x) ((uint8_t)((x) >> 8))
#define bitRead(x, n) (((x) >> (n)) & 0x01)
#define bitSet(x, n) ((x) |= (1UL << (n)))
#define bitClear(x, n) ((x) &= ~(1UL << (n)))
#define bitWrite(x, n, v) ((v) ? bitSet(x, n) : bitClear(x, n))
#define bit(n) (1UL << (n))
#define word(high, low) ((uint16_t)(((high) << 8) | (low)))
#define digitalPinToInterrupt(p) ((p) == 2 ? 0 : ((p) == 3 ? 1 : -1))

typedef uint8_t byte;
typedef bool boolean;
static const uint8_t A0 = 14, A1 = 15, A2 = 16, A3 = 17, A4 = 18, A5 = 19;

void setup();
void loop();
void serialEvent() __attribute__((weak));

void pinMode(uint8_t pin, uint8_t mode);
void digitalWrite(uint8_t pin, uint8_t level);
int digitalRead(uint8_t pin);
int analogRead(uint8_t pin);
void analogWrite(uint8_t pin, int value);
unsigned long millis();
unsigned long micros();
void delay(unsigned long milliseconds);
void delayMicroseconds(unsigned int microseconds);
void tone(uint8_t pin, unsigned int hertz, unsigned long milliseconds = 0);
void noTone(uint8_t pin);
unsigned long pulseIn(uint8_t pin, uint8_t level, unsigned long patience = 1000000UL);
void shiftOut(uint8_t data, uint8_t clock, uint8_t order, uint8_t value);
uint8_t shiftIn(uint8_t data, uint8_t clock, uint8_t order);
void analogReference(uint8_t mode);
void attachInterrupt(uint8_t number, void (*run)(), int mode);
void detachInterrupt(uint8_t number);
long random(long most);
long random(long least, long most);
void randomSeed(unsigned long seed);
long map(long x, long fromLow, long fromHigh, long toLow, long toHigh);
inline bool isDigit(int c) { return isdigit(c); }
inline bool isAlpha(int c) { return isalpha(c); }
inline bool isAlphaNumeric(int c) { return isalnum(c); }
inline bool isSpace(int c) { return isspace(c); }
inline bool isWhitespace(int c) { return isblank(c); }
inline bool isUpperCase(int c) { return isupper(c); }
inline bool isLowerCase(int c) { return islower(c); }
inline bool isPunct(int c) { return ispunct(c); }
inline bool isHexadecimalDigit(int c) { return isxdigit(c); }
inline bool isPrintable(int c) { return isprint(c); }
inline int toUpperCase(int c) { return toupper(c); }
inline int toLowerCase(int c) { return tolower(c); }

#define F(text) (reinterpret_cast<const FlashText *>(PSTR(text)))
#define __FlashStringHelper FlashText

class TextPort {
 public:
  void begin(unsigned long baud);
  void end();
  int available();
  int read();
  int peek();
  void flush();
  long parseInt();
  float parseFloat();
  String readString();
  String readStringUntil(char end);
  size_t readBytes(char *to, size_t count);
  size_t readBytesUntil(char end, char *to, size_t count);
  void setTimeout(unsigned long ms) { patience = ms; }
  size_t write(uint8_t c);
  size_t write(int c) { return write((uint8_t)c); }
  size_t write(const char *text);
  size_t print(const char *text) { return write(text); }
  size_t write(const uint8_t *bytes, size_t count);
  size_t print(const FlashText *text);
  size_t print(const String &text) { return write(text.c_str()); }
  size_t print(char c) { return write((uint8_t)c); }
  size_t print(unsigned char n, int base = DEC) { return print((unsigned long)n, base); }
  size_t print(int n, int base = DEC) { return print((long)n, base); }
  size_t print(unsigned int n, int base = DEC) { return print((unsigned long)n, base); }
  size_t print(long n, int base = DEC);
  size_t print(unsigned long n, int base = DEC);
  size_t print(double x, int digits = 2);
  size_t println() { return write("\r\n"); }
  size_t println(const String &text) { return print(text) + println(); }
  template <class T> size_t println(T value) { return print(value) + println(); }
  template <class T> size_t println(T value, int how) { return print(value, how) + println(); }
  operator bool() { return true; }

 private:
  unsigned long patience = 1000;
  int waitForOne();
};
extern TextPort Serial;
