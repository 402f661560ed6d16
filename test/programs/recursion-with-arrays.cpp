// Arrays and references inside a recursive function belong to each call too.
void sortPart(int *a, int low, int high) {
  if (low >= high) return;
  int middle = a[high];
  int at = low;
  for (int i = low; i < high; i++) {
    if (a[i] < middle) {
      int t = a[i];
      a[i] = a[at];
      a[at] = t;
      at++;
    }
  }
  int t = a[high];
  a[high] = a[at];
  a[at] = t;
  sortPart(a, low, at - 1);
  sortPart(a, at + 1, high);
}
int depthOf(int n, int &deepest) {
  int here[2] = {n, n * 2};
  if (n > deepest) deepest = n;
  if (n < 4) depthOf(n + 1, deepest);
  return here[0] + here[1];
}
void setup() {
  Serial.begin(115200);
  int a[] = {5, 2, 9, 1, 7, 3};
  sortPart(a, 0, 5);
  for (int i = 0; i < 6; i++) Serial.print(a[i]);
  Serial.println();               // expect: 123579
  int deepest = 0;
  Serial.println(depthOf(1, deepest));  // expect: 3
  Serial.println(deepest);        // expect: 4
}
void loop() {}
