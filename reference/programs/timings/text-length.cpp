// Walking over a text. The pin is high as long as it lasts.
// run 400 ms
volatile long result;
char message[] = "when the tide comes in, the ferry leaves";

void work() {
  int n = 0;
  for (int k = 0; k < 50; k++)
    for (byte i = 0; message[i] != 0; i++)
      if (message[i] == 'e') n++;
  result = n;
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
