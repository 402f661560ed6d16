// run 500 ms
void setup() {
  Serial.begin(115200);
  Serial.println(3.14159, 4);
  Serial.println(2.0);
  Serial.println(-0.005);
  Serial.println(1e6, 0);
  Serial.println(1.0 / 3, 7);
  Serial.println(100000);
  Serial.println(0xFFu);
  Serial.println(-42, BIN);
  Serial.println('x');
  Serial.println((byte)'x');
  Serial.println("tab\there");
  Serial.println("quote \"q\" back\\slash");
  Serial.println(true);
  Serial.println(7 > 9);
  Serial.print(12); Serial.print('\t'); Serial.print(0x1F, HEX); Serial.print("\r\n");
  Serial.write(65); Serial.write("bc\n");
  byte bytes[] = {72, 105, 10};
  Serial.write(bytes, 3);
  Serial.println(F("flash"));
  Serial.println(sqrt(-1));
  Serial.println(5e9);
  Serial.println(1 / 0.0);
  Serial.println(12345.678, 1);
  Serial.println(0.1 + 0.2, 10);
  Serial.println(sizeof(double));
  Serial.println(16777217.0, 1);
  Serial.println((long)-2.9);
  Serial.println(B1010, DEC);
  Serial.println(052);
  Serial.println(1234567L * 10);
}
void loop() {}
