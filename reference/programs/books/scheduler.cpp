// run 2000 ms
typedef void (*Task)();
struct Job { Task run; unsigned long every, next; };
void blinkA() { static bool on; on = !on; digitalWrite(5, on); }
void blinkB() { digitalWrite(6, !digitalRead(6)); }
void report() { Serial.print(millis() / 100); Serial.println(" tenths"); }
Job jobs[] = {{blinkA, 200, 0}, {blinkB, 330, 0}, {report, 500, 500}};
void setup() {
  Serial.begin(9600);
  pinMode(5, OUTPUT);
  pinMode(6, OUTPUT);
}
void loop() {
  for (Job &j : jobs)
    if ((long)(millis() - j.next) >= 0) {
      j.next += j.every;
      j.run();
    }
}
