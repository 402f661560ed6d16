// run 300 ms
void swap(int &a, int &b) { int t = a; a = b; b = t; }
void selectionSort(int a[], byte n) {
  for (byte i = 0; i < n - 1; i++) {
    byte least = i;
    for (byte j = i + 1; j < n; j++)
      if (a[j] < a[least]) least = j;
    if (least != i) swap(a[i], a[least]);
  }
}
void insertionSort(float *a, int n) {
  for (int i = 1; i < n; i++) {
    float key = a[i];
    int j = i - 1;
    while (j >= 0 && a[j] > key) {
      a[j + 1] = a[j];
      j--;
    }
    a[j + 1] = key;
  }
}
void quick(int *a, int low, int high) {
  if (low >= high) return;
  int pivot = a[high], i = low - 1;
  for (int j = low; j < high; j++)
    if (a[j] <= pivot) swap(a[++i], a[j]);
  swap(a[i + 1], a[high]);
  quick(a, low, i);
  quick(a, i + 2, high);
}
int a[12], b[12];
float f[] = {3.5, -1, 2.25, 1e3, 0};
void setup() {
  Serial.begin(115200);
  randomSeed(42);
  for (int i = 0; i < 12; i++) b[i] = a[i] = random(-50, 51);
  selectionSort(a, 12);
  quick(b, 0, 11);
  insertionSort(f, 5);
  for (int i = 0; i < 12; i++) { Serial.print(a[i]); Serial.print(i < 11 ? "," : "\n"); }
  for (int i = 0; i < 12; i++) { Serial.print(b[i]); Serial.print(i < 11 ? "," : "\n"); }
  for (float x : f) Serial.println(x, 3);
}
void loop() {}
