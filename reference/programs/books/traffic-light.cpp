// run 9000 ms
// inputs [{"ms":0,"pin":"D4","level":"high"},{"ms":2500,"pin":"D4","level":"low"},{"ms":2600,"pin":"D4","level":"high"}]
const byte RED_PIN = 11, YELLOW_PIN = 10, GREEN_PIN = 9;
const byte WALK = 4;
enum Phase { STOP, READY, GO, SLOW };
const unsigned long lengths[] = {2000, 500, 1500, 800};
const byte lamps[][3] = {{1, 0, 0}, {1, 1, 0}, {0, 0, 1}, {0, 1, 0}};
Phase phase = STOP;
unsigned long since = 0;
bool wanted = false;

void show(Phase p) {
  digitalWrite(RED_PIN, lamps[p][0]);
  digitalWrite(YELLOW_PIN, lamps[p][1]);
  digitalWrite(GREEN_PIN, lamps[p][2]);
}

void setup() {
  Serial.begin(9600);
  pinMode(RED_PIN, OUTPUT);
  pinMode(YELLOW_PIN, OUTPUT);
  pinMode(GREEN_PIN, OUTPUT);
  pinMode(WALK, INPUT_PULLUP);
  show(phase);
}

void loop() {
  if (!digitalRead(WALK)) wanted = true;
  if (millis() - since >= lengths[phase]) {
    since += lengths[phase];
    phase = (Phase)((phase + 1) % 4);
    show(phase);
    if (phase == STOP && wanted) {
      Serial.println(F("people walk"));
      wanted = false;
    }
  }
}
