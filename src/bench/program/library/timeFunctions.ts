// The board's time functions.
//
// delay waits by counting microseconds of timer 0 and so is exact to a few; its wait is jumped over.
// Does not know: pins.
import { cyclesPerMicro, cyclesPerMilli } from "../run/clock.ts";
import { define, type LibraryFunction } from "./define.ts";

export const timeFunctions: readonly LibraryFunction[] = [
  define("millis", "ulong", "", { cycles: 19 }, (m) => m.clock.millis()),
  define("micros", "ulong", "", { cycles: 47 }, (m) => m.clock.micros()),
  define("delay", "void", "ulong", { cycles: 110, still: () => 0 }, (m, milliseconds: number) =>
    m.clock.wait((milliseconds >>> 0) * cyclesPerMilli),
  ),
  // The function takes about a microsecond itself and allows for it; 0 asks for none.
  define("delayMicroseconds", "void", "unsigned", { cycles: 12, still: () => 0 }, (m, micros: number) =>
    m.clock.wait(Math.max(0, micros - 1) * cyclesPerMicro),
  ),
];
