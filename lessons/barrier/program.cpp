// The barrier: press the key and it opens. After a short time it warns and closes again.

#include <Servo.h>

const int keyPin = 2;          // the key joins D2 to GND
const int servoPin = 6;
const int redPin = 9;
const int greenPin = 10;
const int closedAngle = 10;    // degrees
const int openAngle = 100;     // degrees
const int moveTime = 600;      // milliseconds until the arm has surely arrived
const int openTime = 3000;     // milliseconds of green light

Servo arm;

void setup() {
  pinMode(keyPin, INPUT_PULLUP);   // HIGH until the key is pressed
  pinMode(redPin, OUTPUT);
  pinMode(greenPin, OUTPUT);
  digitalWrite(redPin, HIGH);
  arm.attach(servoPin);
  arm.write(closedAngle);
  delay(moveTime);
}

void loop() {
  if (digitalRead(keyPin) == LOW) {
    openBarrier();
    delay(openTime);
    closeBarrier();
  }
}

void openBarrier() {
  arm.write(openAngle);
  delay(moveTime);                 // green only when the arm is up
  digitalWrite(redPin, LOW);
  digitalWrite(greenPin, HIGH);
}

void closeBarrier() {
  digitalWrite(greenPin, LOW);     // red before the arm moves
  digitalWrite(redPin, HIGH);
  delay(1000);
  arm.write(closedAngle);
  delay(moveTime);
}
