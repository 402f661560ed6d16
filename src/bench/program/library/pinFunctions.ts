// The board's functions for pins: digital, analog, sound, pulses, shift registers, interrupts.
//
// Does not know: time functions, text.
import type { Level, PinMode } from "../port.ts";
import { cyclesPerMicro } from "../run/clock.ts";
import { broken } from "../run/halt.ts";
import type { InterruptMode } from "../run/interrupts.ts";
import type { FunctionPointer, Machine } from "../run/machine.ts";
import { changes, define, type LibraryFunction } from "./define.ts";

const modes: readonly PinMode[] = ["input", "output", "pull-up"];
const level = (value: number): Level => (value === 0 ? 0 : 1);

/** The converter's clock is a 128th; a conversion takes 13 of its cycles, the first 25 (ATmega328P data sheet, section 23.4). */
const conversionCycles = 13 * 128;
const firstConversionCycles = 25 * 128;

/** A pin that can pulse has its pulses switched off first. */
const pulseCycles = (m: Machine, pin: number): number => (m.pins.canPulse(pin) ? 16 : 0);

const modeOf = (value: number): PinMode => modes[value] ?? "output";

export const pinFunctions: readonly LibraryFunction[] = [
  define(
    "pinMode",
    "void",
    "byte byte",
    { cycles: 50, still: (m, pin: number, mode: number) => (m.pins.isSet(pin, modeOf(mode)) ? 0 : changes) },
    (m, pin: number, mode: number) => m.pins.setMode(pin, modeOf(mode)),
  ),
  define(
    "digitalWrite",
    "void",
    "byte byte",
    { cycles: 61, still: (m, pin: number, value: number) => (m.pins.isWritten(pin, level(value)) ? 0 : changes) },
    (m, pin: number, value: number) => {
      m.clock.spend(pulseCycles(m, pin));
      m.pins.write(pin, level(value));
      if (pin === 2 || pin === 3) m.interrupts.watch();
    },
  ),
  define(
    "digitalRead",
    "int",
    "byte",
    { cycles: 56, still: (m, pin: number) => (m.pins.isPulsing(pin) ? changes : m.pins.read(pin)) },
    (m, pin: number) => {
      m.clock.spend(pulseCycles(m, pin));
      return m.pins.read(pin);
    },
  ),
  define("analogRead", "int", "byte", { cycles: 40, still: (m, pin: number) => m.pins.readAnalog(pin) }, (m, pin: number) => {
    m.clock.wait(m.pins.startConverter() ? firstConversionCycles : conversionCycles);
    return m.pins.readAnalog(pin);
  }),
  define(
    "analogWrite",
    "void",
    "byte int",
    { cycles: 107, still: (m, pin: number, value: number) => (m.pins.isAnalogWritten(pin, value) ? 0 : changes) },
    (m, pin: number, value: number) => m.pins.writeAnalog(pin, value),
  ),
  define("analogReference", "void", "byte", { cycles: 4 }, (m, mode: number) => m.pins.setReference(mode)),
  define(
    "tone",
    "void",
    "byte unsigned ulong=0",
    {
      cycles: 1500,
      still: (m, pin: number, hertz: number, ms: number) => (m.pins.isSounding(pin, hertz, ms >>> 0) ? 0 : changes),
    },
    (m, pin: number, hertz: number, ms: number) => {
      // Counting the turns of a tone that ends takes one division more.
      if (ms !== 0) m.clock.spend(730);
      m.pins.startTone(pin, hertz, ms >>> 0);
    },
  ),
  define(
    "noTone",
    "void",
    "byte",
    { cycles: 120, still: (m, pin: number) => (m.pins.isSilent(pin) ? 0 : changes) },
    (m, pin: number) => m.pins.endTone(pin),
  ),
  define("pulseIn", "ulong", "byte byte ulong=1000000", { cycles: 60 }, pulseIn),
  define("pulseInLong", "ulong", "byte byte ulong=1000000", { cycles: 60 }, pulseIn),
  define(
    "shiftOut",
    "void",
    "byte byte byte byte",
    { cycles: 60 },
    (m, data: number, clock: number, order: number, value: number) => {
      for (let i = 0; i < 8; i += 1) {
        const bit = order === 0 ? i : 7 - i;
        m.pins.write(data, level((value >> bit) & 1));
        m.clock.spend(81);
        m.pins.write(clock, 1);
        m.clock.spend(74);
        m.pins.write(clock, 0);
        m.clock.spend(74);
      }
    },
  ),
  define("shiftIn", "byte", "byte byte byte", { cycles: 60 }, (m, data: number, clock: number, order: number) => {
    let value = 0;
    for (let i = 0; i < 8; i += 1) {
      m.pins.write(clock, 1);
      m.clock.spend(74);
      const bit = order === 0 ? i : 7 - i;
      value |= m.pins.read(data) << bit;
      m.clock.spend(60);
      m.pins.write(clock, 0);
      m.clock.spend(74);
    }
    return value;
  }),
  define(
    "attachInterrupt",
    "void",
    "byte callback int",
    { cycles: 40 },
    (m, number: number, f: FunctionPointer | null, mode: number) => {
      if (f === null) broken(m.line, "program.nullPointer");
      m.pins.effects += 1;
      m.interrupts.attach(number, (mode & 3) as InterruptMode, () => m.call(f!.index));
    },
  ),
  define("detachInterrupt", "void", "byte", { cycles: 20 }, (m, number: number) => {
    m.pins.effects += 1;
    m.interrupts.detach(number);
  }),
  define("interrupts", "void", "", { cycles: 1, still: () => 0 }, (m) => m.interrupts.setOn(true)),
  define("noInterrupts", "void", "", { cycles: 1, still: () => 0 }, (m) => m.interrupts.setOn(false)),
  define("sei", "void", "", { cycles: 1, still: () => 0 }, (m) => m.interrupts.setOn(true)),
  define("cli", "void", "", { cycles: 1, still: () => 0 }, (m) => m.interrupts.setOn(false)),
];

/**
 * Waits for the pulse to begin and measures it, giving up after `patience` µs. Between events of the port a pin does not
 * change, so each wait goes from event to event.
 *
 * @returns its length in µs, or 0.
 */
function pulseIn(m: Machine, pin: number, value: number, patience: number): number {
  m.pins.effects += 1;
  const wanted = level(value);
  const end = m.clock.time[0]! + (patience >>> 0) * cyclesPerMicro;
  const waitFor = (isThere: (l: Level) => boolean): boolean => {
    while (!isThere(m.pins.read(pin))) {
      if (m.clock.time[0]! >= end) return false;
      m.clock.waitUntil(Math.min(end, m.clock.due));
    }
    return true;
  };
  // A pulse that is on already is let pass.
  if (!waitFor((l) => l !== wanted) || !waitFor((l) => l === wanted)) return 0;
  const start = m.clock.time[0]!;
  if (!waitFor((l) => l !== wanted)) return 0;
  return Math.round((m.clock.time[0]! - start) / cyclesPerMicro) | 0;
}
