// run 200 ms
int find(const int list[], int n, int wanted) {
  for (int i = 0; i < n; ++i)
    if (list[i] == wanted) return i;
  return -1;
}
int binary(const int *list, int n, int wanted) {
  int low = 0, high = n - 1;
  while (low <= high) {
    int middle = low + (high - low) / 2;
    if (list[middle] == wanted) return middle;
    else if (list[middle] < wanted) low = middle + 1;
    else high = middle - 1;
  }
  return ~low;
}
const int primes[] = {2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37};
void setup() {
  Serial.begin(115200);
  const int wanted[] = {7, 8, 37, 1, 40};
  for (int w : wanted) {
    Serial.print(find(primes, sizeof primes / sizeof *primes, w));
    Serial.print(' ');
    Serial.println(binary(primes, sizeof primes / sizeof *primes, w));
  }
}
void loop() {}
