// Rows are filled one after the other; what is not named is zero.
const byte rows = 2;
int grid[rows][3] = {{1, 2}, {4}};
int flat[2][2] = {1, 2, 3, 4};
byte digits[][2] = {{1, 2}, {3, 4}, {5, 6}};
void setup() {
  Serial.begin(115200);
  Serial.println(grid[0][2]);         // expect: 0
  Serial.println(grid[1][0]);         // expect: 4
  Serial.println(flat[1][0]);         // expect: 3
  int sum = 0;
  for (int r = 0; r < 3; r++)
    for (int c = 0; c < 2; c++) sum += digits[r][c];
  Serial.println(sum);                // expect: 21
  Serial.println(sizeof(digits));     // expect: 6
  for (byte d : flat[1]) Serial.print(d);
  Serial.println();                   // expect: 34
}
void loop() {}
