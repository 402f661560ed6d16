// A table with rows and columns. The pin is high as long as it lasts.
// run 400 ms
volatile long result;
int table[8][8];

void work() {
  long s = 0;
  for (byte r = 0; r < 8; r++)
    for (byte c = 0; c < 8; c++) table[r][c] = r * c;
  for (byte k = 0; k < 10; k++)
    for (byte r = 0; r < 8; r++)
      for (byte c = 0; c < 8; c++) s += table[c][r];
  result = s;
}

void setup() {
  Serial.begin(115200);
  pinMode(13, OUTPUT);
  digitalWrite(13, HIGH);
  work();
  digitalWrite(13, LOW);
  Serial.println(result);
}

void loop() {}
