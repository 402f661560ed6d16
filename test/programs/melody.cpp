// A table of notes, played in a loop.
// run 700 ms
// expect tones: D8 262 0-200, D8 330 250-350, D8 392 400-600
struct Note {
  int pitch;
  int length;
};
const Note notes[] = {{262, 200}, {330, 100}, {392, 200}};
const int count = sizeof(notes) / sizeof(Note);
void setup() {
  for (int i = 0; i < count; i++) {
    tone(8, notes[i].pitch, notes[i].length);
    delay(notes[i].length + 50);
  }
}
void loop() {}
