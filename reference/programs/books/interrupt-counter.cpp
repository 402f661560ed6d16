// run 1000 ms
// inputs [{"ms":0,"pin":"D3","level":"high"},{"ms":100,"pin":"D3","level":"low"},{"ms":120,"pin":"D3","level":"high"},{"ms":300,"pin":"D3","level":"low"},{"ms":301,"pin":"D3","level":"high"},{"ms":302,"pin":"D3","level":"low"},{"ms":303,"pin":"D3","level":"high"},{"ms":640,"pin":"D3","level":"low"}]
volatile unsigned int pulses = 0;
volatile unsigned long lastMicros;
void count() {
  pulses++;
  lastMicros = micros();
}
void setup() {
  Serial.begin(9600);
  pinMode(3, INPUT_PULLUP);
  attachInterrupt(digitalPinToInterrupt(3), count, FALLING);
}
void loop() {
  static unsigned long next = 250;
  if (millis() >= next) {
    next += 250;
    noInterrupts();
    unsigned int n = pulses;
    pulses = 0;
    interrupts();
    Serial.print(n);
    Serial.println(" pulses");
  }
}
