// The usual methods of String; places count from 0.
void setup() {
  Serial.begin(115200);
  String s = "Red,Green,Blue";
  Serial.println(s.indexOf(','));           // expect: 3
  Serial.println(s.indexOf(',', 4));        // expect: 9
  Serial.println(s.lastIndexOf(','));       // expect: 9
  Serial.println(s.indexOf("Pink"));        // expect: -1
  Serial.println(s.substring(4, 9));        // expect: Green
  Serial.println(s.substring(10));          // expect: Blue
  Serial.println(s.charAt(0));              // expect: R
  Serial.println(s[1]);                     // expect: e
  Serial.println(s.startsWith("Red"));      // expect: 1
  Serial.println(s.endsWith("red"));        // expect: 0
  s.replace("Green", "Grey");
  Serial.println(s);                        // expect: Red,Grey,Blue
  s.toUpperCase();
  Serial.println(s);                        // expect: RED,GREY,BLUE
  s.remove(3);
  Serial.println(s);                        // expect: RED
  s.setCharAt(1, 'o');
  s[2] = 'w';
  Serial.println(s);                        // expect: Row
  String padded = "  12 ";
  padded.trim();
  Serial.println(padded.toInt() + 1);       // expect: 13
  Serial.println(String("3.5").toFloat());  // expect: 3.50
  Serial.println(String("12ab").toInt());   // expect: 12
  Serial.println(String("ab").toInt());     // expect: 0
  Serial.println(s == "Row");               // expect: 1
  Serial.println(s.equalsIgnoreCase("rOW"));  // expect: 1
  Serial.println(String("a") < String("b"));  // expect: 1
  Serial.println(s.substring(9));           // expect:
}
void loop() {}
