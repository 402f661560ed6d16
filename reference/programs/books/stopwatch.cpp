// run 2600 ms
// inputs [{"ms":0,"pin":"D2","level":"high"},{"ms":300,"pin":"D2","level":"low"},{"ms":350,"pin":"D2","level":"high"},{"ms":2012,"pin":"D2","level":"low"},{"ms":2070,"pin":"D2","level":"high"}]
bool running = false;
unsigned long started, stopped;
int lastState = HIGH;
void printTime(unsigned long ms) {
  unsigned int minutes = ms / 60000UL;
  byte seconds = (ms / 1000) % 60;
  unsigned int rest = ms % 1000;
  char text[16];
  sprintf(text, "%02u:%02u.%03u", minutes, seconds, rest);
  Serial.println(text);
}
void setup() {
  Serial.begin(9600);
  pinMode(2, INPUT_PULLUP);
  printTime(754321UL);
}
void loop() {
  int s = digitalRead(2);
  if (s == LOW && lastState == HIGH) {
    if (!running) started = millis();
    else { stopped = millis(); printTime((stopped - started) / 100 * 100); }
    running = !running;
  }
  lastState = s;
  delay(5);
}
