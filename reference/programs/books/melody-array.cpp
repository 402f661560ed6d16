// run 2600 ms
#define NOTE_C4 262
#define NOTE_D4 294
#define NOTE_E4 330
#define NOTE_G4 392
#define REST 0
const int SPEAKER = 8;
int melody[] = {NOTE_E4, 4, NOTE_D4, 8, NOTE_C4, 8, REST, 4, NOTE_G4, 2};
const int notes = sizeof(melody) / sizeof(melody[0]) / 2;
int tempo = 200;
void setup() {
  int whole = (60000L * 4) / tempo;
  for (int n = 0; n < notes * 2; n = n + 2) {
    int divider = melody[n + 1];
    int length = whole / divider;
    if (melody[n] != REST) tone(SPEAKER, melody[n], length * 0.9);
    delay(length);
    noTone(SPEAKER);
  }
}
void loop() {
}
