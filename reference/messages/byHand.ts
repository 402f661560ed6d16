// Slips as pupils make them, written by hand in one program: what stands there and what they wrote.
//
// They were written before anybody looked what the reader says to them. Judged by the compiler like the drawn ones (record.ts).
// Does not know: the compiler.

export const pupilProgram = `// Night light
#include <Servo.h>
const int LAMP = 9;
const int sensor = A0;
int limit = 400;
unsigned long last = 0;
int history[5] = {0, 0, 0, 0, 0};
Servo flag;
int average() {
  long sum = 0;
  for (int i = 0; i < 5; i++) {
    sum += history[i];
  }
  return sum / 5;
}
void setup() {
  pinMode(LAMP, OUTPUT);
  Serial.begin(9600);
  flag.attach(6);
}
void loop() {
  int value = analogRead(sensor);
  if (value < limit) {
    digitalWrite(LAMP, HIGH);
  } else {
    digitalWrite(LAMP, LOW);
  }
  if (millis() - last > 1000) {
    last = millis();
    Serial.print("value ");
    Serial.println(value);
  }
}
`;

export const pupilSlips: readonly (readonly [stands: string, wrote: string])[] = [
  ["const int LAMP = 9;", "const int LAMP 9;"],
  ["const int LAMP = 9;", "const LAMP = 9;"],
  ["const int LAMP = 9;", "const int LAMP = D9;"],
  ["const int LAMP = 9;", "#define LAMP = 9;"],
  ["int limit = 400;", "int limit == 400;"],
  ["int limit = 400;", 'int limit = "400";'],
  ["int limit = 400;", "int limit : 400;"],
  ["int limit = 400;", "integer limit = 400;"],
  ["int history[5] = {0, 0, 0, 0, 0};", "int history[5] = [0, 0, 0, 0, 0];"],
  ["int history[5] = {0, 0, 0, 0, 0};", "int history[3] = {0, 0, 0, 0, 0};"],
  ["int history[5] = {0, 0, 0, 0, 0};", "int[5] history = {0, 0, 0, 0, 0};"],
  ["#include <Servo.h>\n", ""],
  ["#include <Servo.h>", '#include "Servo.h'],
  ["#include <Servo.h>", "#include <servo.h>"],
  ["int average() {", "int average {"],
  ["int average() {", "average() {"],
  ["int average() {", "int average()"],
  ["for (int i = 0; i < 5; i++) {", "for (int i = 0, i < 5, i++) {"],
  ["for (int i = 0; i < 5; i++) {", "for (i = 0; i < 5; i++) {"],
  ["for (int i = 0; i < 5; i++) {", "for int i = 0; i < 5; i++ {"],
  ["for (int i = 0; i < 5; i++) {", "for (int i = 0; i < 5; i++ {"],
  ["sum += history[i];", "sum += history(i);"],
  ["sum += history[i];", "sum =+ history[;"],
  ["return sum / 5;", "retrun sum / 5;"],
  ["pinMode(LAMP, OUTPUT);", "pinmode(LAMP, OUTPUT);"],
  ["pinMode(LAMP, OUTPUT);", "pinMode(LAMP OUTPUT);"],
  ["pinMode(LAMP, OUTPUT);", "pinMode LAMP, OUTPUT;"],
  ["pinMode(LAMP, OUTPUT);", "pinMode(LAMP, Output);"],
  ["Serial.begin(9600);", "Serial.Begin(9600);"],
  ["Serial.begin(9600);", "serial.begin(9600);"],
  ["Serial.begin(9600);", "Serial.begin(9600)"],
  ["Serial.begin(9600);", "Serial begin(9600);"],
  ["Serial.begin(9600);", "Serial.begin(9600):"],
  ["Serial.begin(9600);", "Serial,begin(9600);"],
  ["void loop() {", "void loop {"],
  ["void loop() {", "void loop()"],
  ["void loop() {", "void loop() ["],
  ["void loop() {", "Void loop() {"],
  ["void loop() {", "void Loop() {"],
  ["int value = analogRead(sensor);", "int value = analogRead(sensor"],
  ["int value = analogRead(sensor);", "value = analogRead(sensor);"],
  ["int value = analogRead(sensor);", "int value = analogRead sensor;"],
  ["int value = analogRead(sensor);", "int value = analogRead();"],
  ["if (value < limit) {", "if (value < limit) then {"],
  ["if (value < limit) {", "if value < limit {"],
  ["if (value < limit) {", "if (value =< limit) {"],
  ["if (value < limit) {", "if (value < limit)) {"],
  ["if (value < limit) {", "if (value < limit); {"],
  ["if (value < limit) {", "If (value < limit) {"],
  ["if (value < limit) {", "if (value < limit) and (value > 3) {"],
  ["if (value < limit) {", "if (value < limit"],
  ["  } else {", "  else {"],
  ["  } else {", "  } else (value > limit) {"],
  ["  } else {", "  } elseif (value > 3) {"],
  ["  } else {", "  } else if {"],
  ["digitalWrite(LAMP, HIGH);", 'digitalWrite(LAMP, "HIGH);'],
  ["digitalWrite(LAMP, HIGH);", "digitalWrite(LAMP, high);"],
  ["digitalWrite(LAMP, HIGH);", "digitalWrite(LAMP; HIGH);"],
  ["digitalWrite(LAMP, HIGH);", "LAMP = HIGH;"],
  ["digitalWrite(LAMP, HIGH);", "delay 500;"],
  ["digitalWrite(LAMP, HIGH);", "digitalWrite(LAMP, HIGH, 5);"],
  ["digitalWrite(LAMP, HIGH);", "digitalWrite{LAMP, HIGH};"],
  ["digitalWrite(LAMP, HIGH);", "digital Write(LAMP, HIGH);"],
  ["if (millis() - last > 1000) {", "if (millis - last > 1000) {"],
  ["if (millis() - last > 1000) {", "if (millis() – last > 1000) {"],
  ["if (millis() - last > 1000) {", "while (millis() - last > 1000 {"],
  ["last = millis();", "last + 1 = millis();"],
  ["last = millis();", "last = millis()();"],
  ['Serial.print("value ");', 'Serial.print(value );"'],
  ['Serial.print("value ");', "Serial.print('value ');"],
  ['Serial.print("value ");', 'Serial.print("value )";'],
  ['Serial.print("value ");', "Serial.print(“value ”);"],
  ['Serial.print("value ");', 'Serial.print("value " + value);'],
  ['Serial.print("value ");', 'Serial.prnt("value ");'],
  ['Serial.print("value ");', 'print("value ");'],
  ["Serial.println(value);\n  }\n}\n", "Serial.println(value);\n  }\n"],
  ["Serial.println(value);\n  }\n}\n", "Serial.println(value);\n  }\n}\n}\n"],
  ["// Night light", "/ Night light"],
  ["// Night light", "Night light"],
  ["// Night light", "/* Night light"],
  ["flag.attach(6);", "flag.atach(6);"],
  ["flag.attach(6);", "Flag.attach(6);"],
  ["flag.attach(6);", "flag = attach(6);"],
  ["flag.attach(6);", "int flag.attach(6);"],
  ["Servo flag;", "servo flag;"],
  ["Servo flag;", "Servo flag"],
  ["Servo flag;", "int LAMP = 5;\nServo flag;"],
  ["unsigned long last = 0;", "unsigned long last = 0,"],
  ["unsigned long last = 0;", "unsigned last long = 0;"],
  ["unsigned long last = 0;", "unsigned long 1st = 0;"],
];

/** @returns the program with the slip, the first place only. */
export function withPupilSlip([stands, wrote]: readonly [string, string]): string {
  const at = pupilProgram.indexOf(stands);
  return pupilProgram.slice(0, at) + wrote + pupilProgram.slice(at + stands.length);
}
