// Runs a program for the chip in simavr and prints what happens at its pins, each with the cycle at which it happens.
//
//   driver PROGRAM.elf CYCLES < inputs
// Inputs, one a line, by cycle: "CYCLE L pin 0|1" a level, "CYCLE V channel millivolts" a voltage, "CYCLE T byte" text.
// Output: "CYCLE pin level" for outputs only, "CYCLE P unit value" for compare registers, "CYCLE T bytes" a line of text in hexadecimal when its
// last byte is handed to the port, "CYCLE end".
#include <simavr/avr_adc.h>
#include <simavr/avr_ioport.h>
#include <simavr/avr_uart.h>
#include <simavr/sim_avr.h>
#include <simavr/sim_elf.h>
#include <simavr/sim_io.h>
#include <simavr/sim_irq.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static avr_t *avr;
static int levels[20];
static const int ddr[] = {0x24, 0x27, 0x2a};  // DDRB, DDRC, DDRD in data space
static int started;

// B0..B5 are D8..D13, C0..C5 A0..A5, D0..D7 D0..D7.
static int pinOf(int port, int bit) { return port == 0 ? (bit < 6 ? 8 + bit : -1) : port == 1 ? (bit < 6 ? 14 + bit : -1) : bit; }
static const char *nameOf(int pin) {
  static char name[8];
  sprintf(name, pin < 14 ? "D%d" : "A%d", pin < 14 ? pin : pin - 14);
  return name;
}

// Looks at all pins of a port when its direction or its latch is written: an output shows its latch.
static void look(int port, int direction, int latch) {
  for (int bit = 0; bit < 8 && started; bit++) {
    int pin = pinOf(port, bit), level = latch >> bit & 1;
    if (pin < 0 || pin == 1 || !(direction >> bit & 1) || levels[pin] == level) continue;
    levels[pin] = level;
    printf("%llu %s %d\n", (unsigned long long)avr->cycle, nameOf(pin), level);
  }
}

// The direction is told before it is written, the latch after.
static void onDirection(struct avr_irq_t *irq, uint32_t value, void *param) {
  int port = (int)(long)param;
  (void)irq;
  look(port, value, avr->data[ddr[port] + 1]);
}
static void onLatch(struct avr_irq_t *irq, uint32_t value, void *param) {
  int port = (int)(long)param;
  (void)irq, (void)value;
  look(port, avr->data[ddr[port]], avr->data[ddr[port] + 1]);
}

static unsigned char text[4096];
static int textLength;

static void printText() {
  if (textLength == 0) return;
  printf("%llu T ", (unsigned long long)avr->cycle);
  for (int i = 0; i < textLength; i++) printf("%02x", text[i]);
  printf("\n");
  textLength = 0;
}

static void onText(struct avr_irq_t *irq, uint32_t value, void *param) {
  (void)irq, (void)param;
  text[textLength++] = value;
  if (value == '\n' || textLength == sizeof text) printText();
}

// A compare register counts only while its pin hangs on it; tones and servos use them otherwise.
static void onCompare(struct avr_irq_t *irq, uint32_t value, void *param) {
  static const int control[] = {0x44, 0x44, 0x80, 0x80, 0xb0, 0xb0};
  int unit = (int)(long)param - 1, bit = unit & 1 ? 5 : 7;
  (void)irq;
  if (started && avr->data[control[unit]] >> bit & 1) printf("%llu P %d %u\n", (unsigned long long)avr->cycle, (int)(long)param, value & 255);
}

int main(int argc, char **argv) {
  if (argc < 3) return 2;
  elf_firmware_t firmware = {{0}};
  if (elf_read_firmware(argv[1], &firmware)) return 2;
  avr = avr_make_mcu_by_name("atmega328p");
  avr_init(avr);
  avr->log = LOG_NONE;
  avr_load_firmware(avr, &firmware);
  avr->frequency = 16000000;
  avr->vcc = avr->avcc = avr->aref = 5000;
  for (int port = 0; port < 3; port++) {
    avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ('B' + port), IOPORT_IRQ_DIRECTION_ALL), onDirection, (void *)(long)port);
    avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ('B' + port), IOPORT_IRQ_REG_PORT), onLatch, (void *)(long)port);
  }
  uint32_t flags = 0;
  avr_ioctl(avr, AVR_IOCTL_UART_GET_FLAGS('0'), &flags);
  flags &= ~(AVR_UART_FLAG_STDIO | AVR_UART_FLAG_POOL_SLEEP);
  avr_ioctl(avr, AVR_IOCTL_UART_SET_FLAGS('0'), &flags);
  avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUTPUT), onText, 0);
  static const int compare[] = {0x47, 0x48, 0x88, 0x8a, 0xb3, 0xb4};
  for (int i = 0; i < 6; i++) avr_irq_register_notify(avr_iomem_getirq(avr, compare[i], NULL, AVR_IOMEM_IRQ_ALL), onCompare, (void *)(long)(i + 1));
  avr_irq_t *textIn = avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_INPUT);
  unsigned long long end = strtoull(argv[2], 0, 10), next = ~0ull;
  char kind = 0;
  int a = 0, b = 0;
  char line[100];
  started = 1;
#define READ() (next = fgets(line, sizeof line, stdin) && sscanf(line, "%llu %c %d %d", &next, &kind, &a, &b) >= 3 ? next : ~0ull)
  READ();
  while (avr->cycle < end) {
    while (next <= avr->cycle) {
      if (kind == 'L') {
        int port = a < 8 ? 2 : a < 14 ? 0 : 1, bit = a < 8 ? a : a < 14 ? a - 8 : a - 14;
        avr_raise_irq(avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ('B' + port), bit), b);
      } else if (kind == 'V') avr_raise_irq(avr_io_getirq(avr, AVR_IOCTL_ADC_GETIRQ, a), b);
      else if (kind == 'T') avr_raise_irq(textIn, a);
      READ();
    }
    int state = avr_run(avr);
    if (state == cpu_Done || state == cpu_Crashed) break;
  }
  printText();
  printf("%llu end\n", (unsigned long long)avr->cycle);
  return 0;
}
