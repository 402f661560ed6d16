// The names that the board's header defines with #define, before a program's own.
//
// They are macros and not functions or constants on purpose: min(i++, 3) counts twice, HIGH = 1 is no assignment to a
// constant but to a number, and a program may define them anew. The bodies are how every textbook of the board's C++
// explains them (common practice; from memory).
// Does not know: functions, types.
import { readTokens } from "./readTokens.ts";
import type { Token } from "./token.ts";

export interface Macro {
  readonly name: string;
  /** Names of the parameters, null if it takes none. */
  readonly parameters: readonly string[] | null;
  readonly body: readonly Token[];
  /** 0 for the board's own. */
  readonly line: number;
}

const definitions: readonly (readonly [name: string, parameters: string | null, body: string])[] = [
  ["HIGH", null, "0x1"],
  ["LOW", null, "0x0"],
  ["INPUT", null, "0x0"],
  ["OUTPUT", null, "0x1"],
  ["INPUT_PULLUP", null, "0x2"],
  ["LED_BUILTIN", null, "13"],
  ["PI", null, "3.1415926535897932384626433832795"],
  ["HALF_PI", null, "1.5707963267948966192313216916398"],
  ["TWO_PI", null, "6.283185307179586476925286766559"],
  ["DEG_TO_RAD", null, "0.017453292519943295769236907684886"],
  ["RAD_TO_DEG", null, "57.295779513082320876798154814105"],
  ["EULER", null, "2.718281828459045235360287471352"],
  ["EXTERNAL", null, "0"],
  ["DEFAULT", null, "1"],
  ["LSBFIRST", null, "0"],
  ["MSBFIRST", null, "1"],
  ["CHANGE", null, "1"],
  ["FALLING", null, "2"],
  ["RISING", null, "3"],
  ["DEC", null, "10"],
  ["HEX", null, "16"],
  ["OCT", null, "8"],
  ["BIN", null, "2"],
  ["NUM_DIGITAL_PINS", null, "20"],
  ["NUM_ANALOG_INPUTS", null, "6"],
  ["F_CPU", null, "16000000L"],
  ["NULL", null, "nullptr"],
  ["PROGMEM", null, ""],
  ["PGM_P", null, "const char*"],
  ["PSTR", "text", "(text)"],
  ["INTERNAL", null, "3"],
  ["min", "a,b", "((a)<(b)?(a):(b))"],
  ["max", "a,b", "((a)>(b)?(a):(b))"],
  ["abs", "x", "((x)>0?(x):-(x))"],
  ["constrain", "x,low,high", "((x)<(low)?(low):((x)>(high)?(high):(x)))"],
  ["round", "x", "((x)>=0?(long)((x)+0.5):(long)((x)-0.5))"],
  ["radians", "x", "((x)*DEG_TO_RAD)"],
  ["degrees", "x", "((x)*RAD_TO_DEG)"],
  ["sq", "x", "((x)*(x))"],
  ["lowByte", "x", "((uint8_t)((x)&0xff))"],
  ["highByte", "x", "((uint8_t)((x)>>8))"],
  ["bitRead", "x,n", "(((x)>>(n))&0x01)"],
  ["bitSet", "x,n", "((x)|=(1UL<<(n)))"],
  ["bitClear", "x,n", "((x)&=~(1UL<<(n)))"],
  ["bitWrite", "x,n,v", "((v)?bitSet(x,n):bitClear(x,n))"],
  ["bit", "n", "(1UL<<(n))"],
  ["digitalPinToInterrupt", "p", "((p)==2?0:((p)==3?1:-1))"],
  ["INT8_MAX", null, "127"],
  ["INT8_MIN", null, "(-128)"],
  ["UINT8_MAX", null, "255"],
  ["INT16_MAX", null, "32767"],
  ["INT16_MIN", null, "(-INT16_MAX-1)"],
  ["UINT16_MAX", null, "65535U"],
  ["INT32_MAX", null, "2147483647L"],
  ["INT32_MIN", null, "(-INT32_MAX-1L)"],
  ["UINT32_MAX", null, "4294967295UL"],
  ["INT_MAX", null, "32767"],
  ["INT_MIN", null, "(-INT_MAX-1)"],
  ["UINT_MAX", null, "65535U"],
  ["LONG_MAX", null, "2147483647L"],
  ["LONG_MIN", null, "(-LONG_MAX-1L)"],
  ["ULONG_MAX", null, "4294967295UL"],
  ["RAND_MAX", null, "0x7FFF"],
];

/** A fresh table of the board's own macros. */
export function boardMacros(): Map<string, Macro> {
  return new Map(builtIn);
}

const builtIn = new Map<string, Macro>(
  definitions.map(([name, parameters, body]) => [
    name,
    {
      name,
      parameters: parameters === null ? null : parameters.split(","),
      body: readTokens("", body).tokens.slice(0, -1),
      line: 0,
    },
  ]),
);
// Binary numbers as the older books write them: B101, B00000101.
for (let digits = 1; digits <= 8; digits += 1)
  for (let value = 0; value < 1 << digits; value += 1) {
    const name = `B${value.toString(2).padStart(digits, "0")}`;
    builtIn.set(name, { name, parameters: null, body: readTokens("", String(value)).tokens.slice(0, -1), line: 0 });
  }
