// The servo object: a pulse every 20 ms on any pin, 544 to 2400 µs wide for 0 to 180 degrees.
//
// The first pulse comes 20 ms after attaching, so an angle written before that is the first the servo ever sees; without one it
// gets 1500 µs (common practice of the textbook servo header; from memory). A value of 544 or more is a width.
// Does not know: how far a real servo turns.
import { cyclesPerMilli } from "../run/clock.ts";
import type { Machine, ServoState } from "../run/machine.ts";
import { changes, define, type LibraryFunction } from "./define.ts";

const usualWidth = 1500;
/** As many as the header's one timer serves. */
const mostServos = 12;

const clamp = (n: number, least: number, most: number) => Math.max(least, Math.min(most, n));
const toWidth = (s: ServoState, degrees: number) => s.least + Math.trunc((degrees * (s.most - s.least)) / 180);
const toDegrees = (s: ServoState, micros: number) =>
  s.most === s.least ? 0 : Math.round(((micros - s.least) * 1800) / (s.most - s.least)) / 10;

export function newServo(): ServoState {
  return { pin: -1, micros: usualWidth, degrees: 92.7, least: 544, most: 2400, isWritten: false };
}

function tell(m: Machine, s: ServoState): void {
  if (s.pin < 0) return;
  m.clock.sync();
  m.port.servo(s.pin, { micros: s.micros, degrees: s.degrees }, m.clock.now());
}

function attach(m: Machine, s: ServoState, pin: number, least: number, most: number): number {
  m.pins.effects += 1;
  if (pin < 0 || pin > 19) return 0;
  const others = m.servos.filter((k) => k !== s);
  if (others.length >= mostServos) return 255;
  m.pins.setMode(pin, "output");
  Object.assign(s, { pin, least, most });
  m.servos = [...others, s];
  if (s.isWritten) tell(m, s);
  else {
    m.clock.setAlarm(m.clock.time[0]! + 20 * cyclesPerMilli, () => {
      if (s.pin === pin && !s.isWritten) tell(m, s);
    });
  }
  return m.servos.length - 1;
}

/** The width and angle that a call asks for. @param degrees null where a width was given. */
function asked(s: ServoState, micros: number, degrees: number | null): { micros: number; degrees: number } {
  const width = clamp(micros, s.least, s.most);
  return { micros: width, degrees: degrees ?? toDegrees(s, width) };
}

/** A value below 544 is an angle. */
function askedBy(s: ServoState, value: number): { micros: number; degrees: number } {
  if (value >= 544) return asked(s, value, null);
  const degrees = clamp(value, 0, 180);
  return asked(s, toWidth(s, degrees), degrees);
}

function isThere(s: ServoState, pulse: { micros: number; degrees: number }): boolean {
  return s.isWritten && s.micros === pulse.micros && s.degrees === pulse.degrees;
}

function move(m: Machine, s: ServoState, pulse: { micros: number; degrees: number }): void {
  if (isThere(s, pulse)) return;
  m.pins.effects += 1;
  Object.assign(s, pulse, { isWritten: true });
  tell(m, s);
}

/** Ends the pulses of all servos: reset. */
export function releaseServos(m: Machine): void {
  for (const s of m.servos) m.port.servo(s.pin, null, m.clock.now());
  m.servos = [];
}

export const servoMethods: readonly LibraryFunction[] = [
  define("Servo.attach", "byte", "int", { cycles: 300 }, (m, s: ServoState, pin: number) => attach(m, s, pin, 544, 2400)),
  define("Servo.attach", "byte", "int int int", { cycles: 300 }, (m, s: ServoState, pin: number, least: number, most: number) =>
    attach(m, s, pin, least, most),
  ),
  define("Servo.detach", "void", "", { cycles: 40 }, (m, s: ServoState) => {
    if (s.pin < 0) return;
    m.pins.effects += 1;
    m.clock.sync();
    m.port.servo(s.pin, null, m.clock.now());
    m.servos = m.servos.filter((k) => k !== s);
    s.pin = -1;
  }),
  define(
    "Servo.write",
    "void",
    "int",
    { cycles: 800, still: (_m, s: ServoState, value: number) => (isThere(s, askedBy(s, value)) ? 0 : changes) },
    (m, s: ServoState, value: number) => move(m, s, askedBy(s, value)),
  ),
  define(
    "Servo.writeMicroseconds",
    "void",
    "int",
    { cycles: 60, still: (_m, s: ServoState, micros: number) => (isThere(s, asked(s, micros, null)) ? 0 : changes) },
    (m, s: ServoState, micros: number) => move(m, s, asked(s, micros, null)),
  ),
  // The width is cut to whole degrees after adding one microsecond, so that a written angle is read back.
  define("Servo.read", "int", "", { cycles: 800, pure: true }, (_m, s: ServoState) =>
    Math.trunc(((s.micros + 1 - s.least) * 180) / Math.max(1, s.most - s.least)),
  ),
  define("Servo.readMicroseconds", "int", "", { cycles: 20, pure: true }, (_m, s: ServoState) => s.micros),
  define("Servo.attached", "bool", "", { cycles: 6, pure: true }, (_m, s: ServoState) => (s.pin >= 0 ? 1 : 0)),
];
