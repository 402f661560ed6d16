// run 3500 ms
// inputs [{"ms":50,"text":"on\n"},{"ms":300,"text":"dim=90\n"},{"ms":700,"text":"off\n"},{"ms":900,"text":"hm\n"}]
const int lamp = 9;
void setup() {
  Serial.begin(9600);
  pinMode(lamp, OUTPUT);
}
void loop() {
  if (Serial.available()) {
    String command = Serial.readStringUntil('\n');
    command.trim();
    if (command == "on") digitalWrite(lamp, HIGH);
    else if (command == "off") digitalWrite(lamp, LOW);
    else if (command.startsWith("dim=")) {
      int level = command.substring(4).toInt();
      analogWrite(lamp, level);
      Serial.println("dim to " + String(level));
    } else {
      Serial.print("what is \"");
      Serial.print(command);
      Serial.println("\"?");
    }
  }
}
