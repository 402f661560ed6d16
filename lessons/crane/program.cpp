// The crane: the key lowers the hook, and after a moment the crane lifts it again.

const int keyPin = 2;                      // the key joins D2 to GND
const int coilPins[] = {8, 9, 10, 11};     // through the driver to the coils a, b, c, d
const int steps = 500;                     // about a quarter of a turn
const int stepTime = 3;                    // ms; sooner than 2 ms the motor cannot follow

int coil = 0;                              // the coil that is fed, together with the next one

void setup() {
  pinMode(keyPin, INPUT_PULLUP);           // HIGH until the key is pressed
  for (int i = 0; i < 4; i++) {
    pinMode(coilPins[i], OUTPUT);
  }
}

void loop() {
  if (digitalRead(keyPin) == LOW) {
    turn(1);
    delay(1000);
    turn(-1);
  }
}

// Some steps forwards (1) or backwards (-1). At rest no coil is fed, so that motor and batteries stay cool.
void turn(int way) {
  for (int i = 0; i < steps; i++) {
    coil = (coil + way + 4) % 4;
    for (int c = 0; c < 4; c++) {
      bool fed = (c == coil || c == (coil + 1) % 4);
      digitalWrite(coilPins[c], fed);
    }
    delay(stepTime);
  }
  for (int c = 0; c < 4; c++) {
    digitalWrite(coilPins[c], LOW);
  }
}
