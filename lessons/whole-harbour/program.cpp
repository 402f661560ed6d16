// The whole harbour on one board. Nothing waits with delay, so that nothing keeps the rest waiting.

#include <Servo.h>

const int keyPin = 2;
const int servoPin = 6;
const int hornPin = 8;
const int quayPin = 10;
const int towerPin = 13;
const int eyePin = A0;
const int dusk = 250;                  // below this it is dark
const int dawn = 350;                  // above this it is light; between the two nothing changes
const unsigned long turn = 1000;       // ms from flash to flash
const unsigned long flash = 250;       // ms of light
const unsigned long openFor = 3000;    // ms that the barrier stays open

Servo barrier;
bool isNight = false;
bool isOpen = false;
unsigned long openedAt = 0;

void setup() {
  pinMode(keyPin, INPUT_PULLUP);
  pinMode(quayPin, OUTPUT);
  pinMode(towerPin, OUTPUT);
  barrier.attach(servoPin);
  barrier.write(10);
}

void loop() {
  watchTheLight();
  shineTheTower();
  workTheBarrier();
}

void watchTheLight() {
  int light = analogRead(eyePin);
  if (light < dusk) isNight = true;
  if (light > dawn) isNight = false;
  digitalWrite(quayPin, isNight);
}

void shineTheTower() {
  bool isFlash = millis() % turn < flash;
  digitalWrite(towerPin, isNight && isFlash);
}

void workTheBarrier() {
  if (!isOpen && digitalRead(keyPin) == LOW) {
    isOpen = true;
    openedAt = millis();
    tone(hornPin, 220, 500);
    barrier.write(100);
  }
  if (isOpen && millis() - openedAt >= openFor) {
    isOpen = false;
    barrier.write(10);
  }
}
