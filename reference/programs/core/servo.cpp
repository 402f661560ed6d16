#include "Servo.h"

#include <avr/interrupt.h>
#include <avr/io.h>

static Servo *servos[12];
static uint8_t count;
static int8_t turn;

ISR(TIMER1_COMPA_vect) {
  if (turn < 0) TCNT1 = 0;
  else if (turn < count && servos[turn]->isOn) digitalWrite(servos[turn]->pin, LOW);
  turn++;
  if (turn < count) {
    OCR1A = TCNT1 + servos[turn]->ticks;
    if (servos[turn]->isOn) digitalWrite(servos[turn]->pin, HIGH);
  } else {
    OCR1A = TCNT1 + 4 < 40000 ? 40000 : TCNT1 + 4;
    turn = -1;
  }
}

Servo::Servo() : pin(0), isOn(false), ticks(3000), least(544), most(2400) {
  if (count < 12) servos[count++] = this;
}

uint8_t Servo::attach(int p, int from, int to) {
  pinMode(p, OUTPUT);
  pin = p;
  least = from;
  most = to;
  if (!(TIMSK1 & _BV(OCIE1A))) {
    TCCR1A = 0;
    TCCR1B = _BV(CS11);
    TCNT1 = 0;
    TIFR1 |= _BV(OCF1A);
    OCR1A = 100;
    TIMSK1 |= _BV(OCIE1A);
  }
  isOn = true;
  return 0;
}

void Servo::detach() {
  isOn = false;
  TIMSK1 &= ~_BV(OCIE1A);
}

void Servo::write(int value) {
  if (value < 544) {
    value = constrain(value, 0, 180);
    value = map(value, 0, 180, least, most);
  }
  writeMicroseconds(value);
}

void Servo::writeMicroseconds(int micros) {
  micros = constrain(micros, least, most);
  uint8_t before = SREG;
  cli();
  ticks = micros * 2;
  SREG = before;
}

int Servo::read() { return map(ticks / 2 + 1, least, most, 0, 180); }
