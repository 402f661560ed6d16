// run 500 ms
String harbour = "Old";
String greet(const String &name, int n) {
  String s = "Hello ";
  s += name;
  s += ' ';
  s += n;
  return s + "!";
}
void setup() {
  Serial.begin(115200);
  harbour += " harbour";
  Serial.println(harbour);
  Serial.println(harbour.length());
  Serial.println(greet("crane", 7));
  String number = String(255, HEX);
  number.toUpperCase();
  Serial.println("0x" + number);
  Serial.println(String(3.14159, 3));
  Serial.println(String(42) + "/" + String(-7));
  Serial.println(harbour.indexOf("bour"));
  Serial.println(harbour.indexOf('z'));
  Serial.println(harbour.substring(4));
  Serial.println(harbour.substring(0, 3));
  harbour.replace("Old", "New");
  Serial.println(harbour);
  Serial.println(harbour.startsWith("New") && harbour.endsWith("bour"));
  Serial.println(harbour == "New harbour" ? "same" : "other");
  Serial.println(String("apple") < String("banana"));
  Serial.println(harbour.charAt(1));
  harbour[0] = 'n';
  Serial.println(harbour);
  String blank = "   x y  ";
  blank.trim();
  Serial.print('[');
  Serial.print(blank);
  Serial.println(']');
  Serial.println(String("12abc").toInt() + 1);
  Serial.println(String("2.5").toFloat() * 2);
  Serial.println(String("YES").equalsIgnoreCase("yes"));
  char buf[6];
  harbour.toCharArray(buf, 6);
  Serial.println(buf);
  harbour.remove(3);
  Serial.println(harbour);
  Serial.println(harbour.c_str());
}
void loop() {}
