// run 1200 ms
// inputs [{"ms":0,"pin":"A2","value":200},{"ms":500,"pin":"A2","value":600}]
float kp = 0.4, ki = 0.05, sum = 0;
int target = 512;
void setup() { pinMode(10, OUTPUT); }
void loop() {
  int error = target - analogRead(A2);
  sum = constrain(sum + error, -2000.0, 2000.0);
  float out = kp * error + ki * sum;
  analogWrite(10, constrain((int)out, 1, 254));
  delay(100);
}
