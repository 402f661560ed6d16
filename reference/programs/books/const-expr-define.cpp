// run 200 ms
#define LED_COUNT 4
#define FIRST_LED 5
#define LAST_LED (FIRST_LED + LED_COUNT - 1)
#define SECONDS(x) ((x) * 1000UL)
#define DEBUG
#ifdef DEBUG
#define LOG(x) Serial.println(x)
#else
#define LOG(x)
#endif
#if LED_COUNT > 3
const char *size = "long";
#else
const char *size = "short";
#endif
#define square(x) ((x) * (x))
constexpr byte table[square(2)] = {1, 2, 4, 8};
const unsigned long PERIOD = SECONDS(2) + 500;
enum { OFF, ON, AUTO = 10, LAST };
enum Colour : byte { RED = 'r', BLUE = 'b' };
typedef unsigned int number;
void setup() {
  Serial.begin(115200);
  LOG(LAST_LED);
  LOG(PERIOD);
  LOG(size);
  LOG(sizeof(table));
  LOG(LAST);
  Colour c = BLUE;
  LOG((char)c);
  LOG(sizeof(Colour));
  number n = 65535;
  n++;
  LOG(n);
  const int &ref = LED_COUNT;
  LOG(ref + square(5));

}
void loop() {}
