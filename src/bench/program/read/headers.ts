// The headers a program may name behind #include.
//
// The board's own functions and the usual C ones are there without any header, as the class's tools put the board's header
// above every program. Only the headers of servo and stepper bring names that are not there otherwise.
// Does not know: what a header declares.
import { contentHash } from "../../../base/index.ts";

const known: ReadonlySet<string> = new Set([
  "Servo.h",
  "Stepper.h",
  "board.h",
  "stdint.h",
  "stdbool.h",
  "stddef.h",
  "stdlib.h",
  "stdio.h",
  "string.h",
  "ctype.h",
  "math.h",
  "limits.h",
  "avr/pgmspace.h",
]);

/**
 * The hash of a header that one product's tools put above programs, named after the product. It declares what is there anyway,
 * so it is let pass; product names do not stand in this project.
 */
const passed: ReadonlySet<string> = new Set(["8cce10047d06b652a38093be5f6973e9f14543913874afbd99d4fc0bd2bff8d8"]);

/** Headers that are there in class, and whose functions are not run here. */
const unsupported: ReadonlySet<string> = new Set([
  "Wire.h",
  "SPI.h",
  "EEPROM.h",
  "avr/io.h",
  "avr/interrupt.h",
  "avr/sleep.h",
  "avr/wdt.h",
  "avr/eeprom.h",
  "util/delay.h",
  "stdarg.h",
  "time.h",
  "setjmp.h",
]);

export function isUnsupportedHeader(name: string): boolean {
  return unsupported.has(name);
}

export const headerNames: readonly string[] = [...known];

export function isKnownHeader(name: string): boolean {
  return known.has(name) || passed.has(contentHash(name));
}
