// A degree sign is two bytes in UTF-8.
void setup() {
  Serial.begin(115200);
  char text[] = "20°C";
  Serial.println(text);               // expect: 20°C
  Serial.println(strlen(text));       // expect: 5
  Serial.println(String("é").length());  // expect: 2
}
void loop() {}
