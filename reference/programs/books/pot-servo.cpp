// run 1500 ms
// inputs [{"ms":0,"pin":"A0","value":0},{"ms":400,"pin":"A0","value":1023},{"ms":900,"pin":"A0","value":511}]
#include <Servo.h>
Servo myservo;
int potpin = A0;
int val;
void setup() {
  myservo.attach(9);
}
void loop() {
  val = analogRead(potpin);
  val = map(val, 0, 1023, 0, 180);
  myservo.write(val);
  delay(15);
}
