// run 700 ms
const byte ROWS = 4, COLS = 5;
const bool font[3][ROWS][COLS] = {
  {{0, 1, 1, 1, 0}, {1, 0, 0, 0, 1}, {1, 1, 1, 1, 1}, {1, 0, 0, 0, 1}},
  {{1, 1, 1, 1, 0}, {1, 0, 0, 1, 0}, {1, 0, 0, 1, 0}, {1, 1, 1, 1, 0}},
  {{1}, {0, 1}, {0, 0, 1}},
};
int board[ROWS][COLS];
void turn(const int from[ROWS][COLS], int to[COLS][ROWS]) {
  for (int r = 0; r < ROWS; r++)
    for (int c = 0; c < COLS; c++) to[c][r] = from[r][c];
}
void setup() {
  Serial.begin(115200);
  for (auto &letter : font) {
    for (auto &row : letter) {
      for (bool dot : row) Serial.print(dot ? '#' : '.');
      Serial.println();
    }
    Serial.println();
  }
  int turned[COLS][ROWS];
  for (int i = 0; i < ROWS * COLS; i++) board[i / COLS][i % COLS] = i;
  turn(board, turned);
  for (int i = 0; i < COLS; i++) {
    for (int j = 0; j < ROWS; j++) {
      Serial.print(turned[i][j]);
      Serial.print(j == ROWS - 1 ? '\n' : ' ');
    }
  }
  Serial.println((int)sizeof(board) / (int)sizeof(board[0]));
}
void loop() {}
