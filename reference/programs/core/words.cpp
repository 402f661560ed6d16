// The class String of the reference board.
#include "board.h"

String::String(const char *text) {
  if (text) take(text, strlen(text));
}
String::String(const String &other) { take(other.c_str(), other.size); }
String::String(const FlashText *text) {
  PGM_P p = reinterpret_cast<PGM_P>(text);
  unsigned int n = strlen_P(p);
  if (reserve(n)) {
    strcpy_P(chars, p);
    size = n;
  }
}
String::String(char c) { take(&c, 1); }
String::String(unsigned char n, unsigned char base) : String((unsigned long)n, base) {}
String::String(int n, unsigned char base) {
  char digits[18];
  itoa(n, digits, base);
  take(digits, strlen(digits));
}
String::String(unsigned int n, unsigned char base) : String((unsigned long)n, base) {}
String::String(long n, unsigned char base) {
  char digits[34];
  ltoa(n, digits, base);
  take(digits, strlen(digits));
}
String::String(unsigned long n, unsigned char base) {
  char digits[34];
  ultoa(n, digits, base);
  take(digits, strlen(digits));
}
String::String(float x, unsigned char decimals) : String((double)x, decimals) {}
String::String(double x, unsigned char decimals) {
  char digits[33];
  dtostrf(x, decimals + 2, decimals, digits);
  take(digits, strlen(digits));
}
String::~String() { free(chars); }
String &String::operator=(const String &other) {
  if (this != &other) take(other.c_str(), other.size);
  return *this;
}

bool String::reserve(unsigned int bytes) {
  if (chars && room >= bytes) return true;
  char *more = (char *)realloc(chars, bytes + 1);
  if (!more) return false;
  if (!chars) more[0] = 0;
  chars = more;
  room = bytes;
  return true;
}

void String::take(const char *text, unsigned int bytes) {
  if (!reserve(bytes)) return;
  memmove(chars, text, bytes);
  chars[bytes] = 0;
  size = bytes;
}

void String::setCharAt(unsigned int i, char c) {
  if (i < size) chars[i] = c;
}
char &String::operator[](unsigned int i) {
  static char nowhere;
  if (i < size) return chars[i];
  nowhere = 0;
  return nowhere;
}

bool String::concat(const String &other) {
  unsigned int more = other.size;
  if (!reserve(size + more)) return false;
  memmove(chars + size, other.c_str(), more);
  size += more;
  chars[size] = 0;
  return true;
}
String &String::operator+=(const String &other) {
  concat(other);
  return *this;
}

int String::compareTo(const String &other) const { return strcmp(c_str(), other.c_str()); }
bool String::equalsIgnoreCase(const String &other) const { return size == other.size && !strcasecmp(c_str(), other.c_str()); }
bool String::startsWith(const String &other, unsigned int from) const {
  return from + other.size <= size && !strncmp(c_str() + from, other.c_str(), other.size);
}
bool String::endsWith(const String &other) const {
  return other.size <= size && !strcmp(c_str() + size - other.size, other.c_str());
}

int String::indexOf(char c, unsigned int from) const {
  if (from >= size) return -1;
  const char *found = strchr(chars + from, c);
  return found ? found - chars : -1;
}
int String::indexOf(const String &what, unsigned int from) const {
  if (from >= size) return -1;
  const char *found = strstr(chars + from, what.c_str());
  return found ? found - chars : -1;
}
int String::lastIndexOf(char c) const {
  const char *found = size ? strrchr(chars, c) : nullptr;
  return found ? found - chars : -1;
}
int String::lastIndexOf(const String &what) const {
  if (!what.size || what.size > size) return -1;
  for (int i = size - what.size; i >= 0; i--)
    if (!strncmp(chars + i, what.chars, what.size)) return i;
  return -1;
}
String String::substring(unsigned int from, unsigned int to) const {
  if (from > to) {
    unsigned int other = from;
    from = to;
    to = other;
  }
  String part;
  if (from >= size) return part;
  if (to > size) to = size;
  part.take(chars + from, to - from);
  return part;
}
void String::replace(char from, char to) {
  for (unsigned int i = 0; i < size; i++)
    if (chars[i] == from) chars[i] = to;
}
void String::replace(const String &from, const String &to) {
  if (!from.size) return;
  String made;
  unsigned int at = 0;
  for (int found; (found = indexOf(from, at)) >= 0; at = found + from.size) {
    made += substring(at, found);
    made += to;
  }
  made += substring(at);
  *this = made;
}
void String::remove(unsigned int at, unsigned int count) {
  if (at >= size || !count) return;
  if (count > size - at) count = size - at;
  memmove(chars + at, chars + at + count, size - at - count + 1);
  size -= count;
}
void String::toUpperCase() {
  for (unsigned int i = 0; i < size; i++) chars[i] = toupper(chars[i]);
}
void String::toLowerCase() {
  for (unsigned int i = 0; i < size; i++) chars[i] = tolower(chars[i]);
}
void String::trim() {
  unsigned int from = 0, to = size;
  while (from < to && isspace(chars[from])) from++;
  while (to > from && isspace(chars[to - 1])) to--;
  if (size) take(chars + from, to - from);
}
void String::toCharArray(char *to, unsigned int bytes) const {
  if (!bytes || !to) return;
  unsigned int n = size < bytes - 1 ? size : bytes - 1;
  memcpy(to, c_str(), n);
  to[n] = 0;
}
long String::toInt() const { return atol(c_str()); }
float String::toFloat() const { return atof(c_str()); }

String operator+(const String &a, const String &b) {
  String sum(a);
  sum.concat(b);
  return sum;
}
String operator+(const String &a, char b) { return a + String(b); }
String operator+(const String &a, unsigned char b) { return a + String(b); }
String operator+(const String &a, int b) { return a + String(b); }
String operator+(const String &a, unsigned int b) { return a + String(b); }
String operator+(const String &a, long b) { return a + String(b); }
String operator+(const String &a, unsigned long b) { return a + String(b); }
String operator+(const String &a, float b) { return a + String(b); }
String operator+(const String &a, double b) { return a + String(b); }
String operator+(char a, const String &b) { return String(a) + b; }
String operator+(unsigned char a, const String &b) { return String(a) + b; }
String operator+(int a, const String &b) { return String(a) + b; }
String operator+(unsigned int a, const String &b) { return String(a) + b; }
String operator+(long a, const String &b) { return String(a) + b; }
String operator+(unsigned long a, const String &b) { return String(a) + b; }
String operator+(float a, const String &b) { return String(a) + b; }
String operator+(double a, const String &b) { return String(a) + b; }
