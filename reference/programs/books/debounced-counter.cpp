// run 1500 ms
// inputs [{"ms":0,"pin":"D2","level":"high"},{"ms":200,"pin":"D2","level":"low"},{"ms":203,"pin":"D2","level":"high"},{"ms":205,"pin":"D2","level":"low"},{"ms":500,"pin":"D2","level":"high"},{"ms":504,"pin":"D2","level":"low"},{"ms":506,"pin":"D2","level":"high"},{"ms":900,"pin":"D2","level":"low"},{"ms":990,"pin":"D2","level":"high"}]
#define BUTTON 2
#define BOUNCE 25UL
int counter;
int stable = HIGH, last = HIGH;
unsigned long changedAt;

void setup() {
  pinMode(BUTTON, INPUT_PULLUP);
  Serial.begin(9600);
}

void loop() {
  int now = digitalRead(BUTTON);
  if (now != last) {
    changedAt = millis();
    last = now;
  }
  if ((millis() - changedAt) > BOUNCE && now != stable) {
    stable = now;
    if (stable == LOW) {
      counter++;
      Serial.print("pressed ");
      Serial.print(counter);
      Serial.println(counter == 1 ? " time" : " times");
    }
  }
}
