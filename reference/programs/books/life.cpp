// run 800 ms
const byte W = 8, H = 6;
byte world[H], next_[H];
bool alive(int r, int c) { return bitRead(world[(r + H) % H], (c + W) % W); }
void step() {
  for (int r = 0; r < H; r++) {
    next_[r] = 0;
    for (int c = 0; c < W; c++) {
      byte around = 0;
      for (int dr = -1; dr <= 1; dr++)
        for (int dc = -1; dc <= 1; dc++)
          if (dr || dc) around += alive(r + dr, c + dc);
      if (around == 3 || (around == 2 && alive(r, c))) bitSet(next_[r], c);
    }
  }
  for (int r = 0; r < H; r++) world[r] = next_[r];
}
void setup() {
  Serial.begin(115200);
  world[0] = B010;
  world[1] = B100;
  world[2] = B111;
  for (int g = 0; g < 4; g++) step();
  for (byte row : world) {
    for (int c = 0; c < W; c++) Serial.print(row >> c & 1 ? '#' : '.');
    Serial.println();
  }
}
void loop() {}
