// run 300 ms
#define SIZE 8
struct Ring {
  int data[SIZE];
  uint8_t head = 0, count = 0;
  bool put(int v) {
    if (count == SIZE) return false;
    data[(head + count++) % SIZE] = v;
    return true;
  }
  bool get(int &v) {
    if (!count) return false;
    v = data[head];
    head = (head + 1) & (SIZE - 1);
    count--;
    return true;
  }
};
Ring ring;
void setup() {
  Serial.begin(115200);
  int lost = 0;
  for (int i = 0; i < 20; i++) {
    if (!ring.put(i * i)) lost++;
    if (i % 3 == 2) {
      int v;
      if (ring.get(v)) Serial.println(v);
    }
  }
  int v = -1;
  while (ring.get(v)) {
    Serial.print(v);
    Serial.print(' ');
  }
  Serial.println();
  Serial.println(lost);
  Serial.println(sizeof(Ring));
  Serial.println(sizeof ring.data);
}
void loop() {}
