// How the board's header declares its functions, as the compiler shows them in messages.
//
// Source: the functions as every textbook of the board's C++ lists them (common practice), in the spelling of avr-g++ 5.4.
// Does not know: what they do.

interface Signature {
  readonly text: string;
  /** There are several forms: the compiler then says that none matches. */
  readonly isOverloaded?: true;
}

export const boardSignatures: Readonly<Record<string, Signature>> = {
  pinMode: { text: "void pinMode(uint8_t, uint8_t)" },
  digitalWrite: { text: "void digitalWrite(uint8_t, uint8_t)" },
  digitalRead: { text: "int digitalRead(uint8_t)" },
  analogRead: { text: "int analogRead(uint8_t)" },
  analogWrite: { text: "void analogWrite(uint8_t, int)" },
  millis: { text: "long unsigned int millis()" },
  micros: { text: "long unsigned int micros()" },
  delay: { text: "void delay(long unsigned int)" },
  delayMicroseconds: { text: "void delayMicroseconds(unsigned int)" },
  tone: { text: "void tone(uint8_t, unsigned int, long unsigned int)" },
  noTone: { text: "void noTone(uint8_t)" },
  pulseIn: { text: "long unsigned int pulseIn(uint8_t, uint8_t, long unsigned int)" },
  shiftOut: { text: "void shiftOut(uint8_t, uint8_t, uint8_t, uint8_t)" },
  attachInterrupt: { text: "void attachInterrupt(uint8_t, void (*)(), int)" },
  random: { text: "long int random(long int)", isOverloaded: true },
  randomSeed: { text: "void randomSeed(long unsigned int)" },
  map: { text: "long int map(long int, long int, long int, long int, long int)" },
  strlen: { text: "size_t strlen(const char*)" },
  strcmp: { text: "int strcmp(const char*, const char*)" },
  strcpy: { text: "char* strcpy(char*, const char*)" },
  strcat: { text: "char* strcat(char*, const char*)" },
  atoi: { text: "int atoi(const char*)" },
  itoa: { text: "char* itoa(int, char*, int)" },
  dtostrf: { text: "char* dtostrf(double, signed char, unsigned char, char*)" },
};

/** The class behind a thing of the library, as messages name it. */
export function classOf(name: string): string | null {
  if (name === "Serial") return "class TextPort";
  return name === "Servo" || name === "String" ? `class ${name}` : null;
}
