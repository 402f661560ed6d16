// run 400 ms
String line = "7,42,-13,1000,5";
int values[8];
int split(String text, int *out, int most) {
  int n = 0, from = 0;
  while (n < most) {
    int comma = text.indexOf(',', from);
    if (comma == -1) {
      out[n++] = text.substring(from).toInt();
      break;
    }
    out[n++] = text.substring(from, comma).toInt();
    from = comma + 1;
  }
  return n;
}
void setup() {
  Serial.begin(115200);
  int n = split(line, values, 8);
  long sum = 0;
  for (int i = 0; i < n; i++) sum += values[i];
  Serial.print(n);
  Serial.print(" values, sum ");
  Serial.println(sum);
  String reversed = "";
  for (int i = line.length() - 1; i >= 0; i--) reversed += line[i];
  Serial.println(reversed);
}
void loop() {}
