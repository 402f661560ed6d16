// run 300 ms
unsigned long start = 4294967200UL;
void setup() {
  Serial.begin(115200);
  unsigned long now = start + 150;
  Serial.println(now);
  Serial.println(now - start);
  Serial.println(now - start >= 150UL);
  Serial.println(now >= start + 150);
  unsigned int shortNow = 10, shortThen = 65500u;
  Serial.println(shortNow - shortThen);
  Serial.println((unsigned int)(shortNow - shortThen) > 40);
  int deep = 32000;
  deep += 1000;
  Serial.println(deep);
  byte b = 250;
  b += 10;
  Serial.println(b);
  char c = 127;
  c++;
  Serial.println((int)c);
  long l = 2147483647L;
  l++;
  Serial.println(l);
  int seconds = 40;
  long wrong = seconds * 1000;
  Serial.println(wrong);
  long right = seconds * 1000L;
  Serial.println(right);
  unsigned u = 5;
  Serial.println(u - 6 > 0 ? "big" : "small");
  Serial.println(-1 < u ? "less" : "not less");
}
void loop() {}
