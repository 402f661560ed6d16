// The reference board's texts: the class String, over the C library's memory and string functions.
#pragma once
#include <stddef.h>

class FlashText;

class String {
 public:
  String(const char *text = "");
  String(const String &other);
  String(const FlashText *text);
  explicit String(char c);
  explicit String(unsigned char n, unsigned char base = 10);
  explicit String(int n, unsigned char base = 10);
  explicit String(unsigned int n, unsigned char base = 10);
  explicit String(long n, unsigned char base = 10);
  explicit String(unsigned long n, unsigned char base = 10);
  explicit String(float x, unsigned char decimals = 2);
  explicit String(double x, unsigned char decimals = 2);
  ~String();
  String &operator=(const String &other);

  unsigned int length() const { return size; }
  const char *c_str() const { return chars ? chars : ""; }
  bool reserve(unsigned int bytes);
  char charAt(unsigned int i) const { return i < size ? chars[i] : 0; }
  void setCharAt(unsigned int i, char c);
  char operator[](unsigned int i) const { return charAt(i); }
  char &operator[](unsigned int i);

  bool concat(const String &other);
  String &operator+=(const String &other);
  String &operator+=(char c) { return *this += String(c); }
  String &operator+=(unsigned char n) { return *this += String(n); }
  String &operator+=(int n) { return *this += String(n); }
  String &operator+=(unsigned int n) { return *this += String(n); }
  String &operator+=(long n) { return *this += String(n); }
  String &operator+=(unsigned long n) { return *this += String(n); }
  String &operator+=(float x) { return *this += String(x); }
  String &operator+=(double x) { return *this += String(x); }

  int compareTo(const String &other) const;
  bool equals(const String &other) const { return compareTo(other) == 0; }
  bool equalsIgnoreCase(const String &other) const;
  bool startsWith(const String &other, unsigned int from = 0) const;
  bool endsWith(const String &other) const;
  bool operator==(const String &other) const { return equals(other); }
  bool operator!=(const String &other) const { return !equals(other); }
  bool operator<(const String &other) const { return compareTo(other) < 0; }
  bool operator>(const String &other) const { return compareTo(other) > 0; }
  bool operator<=(const String &other) const { return compareTo(other) <= 0; }
  bool operator>=(const String &other) const { return compareTo(other) >= 0; }

  int indexOf(char c, unsigned int from = 0) const;
  int indexOf(const String &what, unsigned int from = 0) const;
  int lastIndexOf(char c) const;
  int lastIndexOf(const String &what) const;
  String substring(unsigned int from) const { return substring(from, size); }
  String substring(unsigned int from, unsigned int to) const;
  void replace(char from, char to);
  void replace(const String &from, const String &to);
  void remove(unsigned int at) { remove(at, size); }
  void remove(unsigned int at, unsigned int count);
  void toUpperCase();
  void toLowerCase();
  void trim();
  void toCharArray(char *to, unsigned int bytes) const;
  long toInt() const;
  float toFloat() const;

 private:
  char *chars = nullptr;
  unsigned int size = 0;
  unsigned int room = 0;
  void take(const char *text, unsigned int bytes);
};

String operator+(const String &a, const String &b);
String operator+(const String &a, char b);
String operator+(const String &a, unsigned char b);
String operator+(const String &a, int b);
String operator+(const String &a, unsigned int b);
String operator+(const String &a, long b);
String operator+(const String &a, unsigned long b);
String operator+(const String &a, float b);
String operator+(const String &a, double b);
String operator+(char a, const String &b);
String operator+(unsigned char a, const String &b);
String operator+(int a, const String &b);
String operator+(unsigned int a, const String &b);
String operator+(long a, const String &b);
String operator+(unsigned long a, const String &b);
String operator+(float a, const String &b);
String operator+(double a, const String &b);
