// Fields of structs. The pin is high as long as it lasts.
// run 400 ms
volatile long result;
struct Point {
  int x;
  int dx;
};
Point points[4] = {{5, 3}, {50, -7}, {99, 2}, {0, 11}};

void work() {
  for (int k = 0; k < 100; k++)
    for (byte i = 0; i < 4; i++) {
      points[i].x += points[i].dx;
      if (points[i].x > 100 || points[i].x < 0) points[i].dx = -points[i].dx;
    }
  result = points[0].x + points[3].x;
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
