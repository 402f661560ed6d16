// A port that passes everything on to another and remembers how the pins stand and what was sent.
//
// Does not know: the program.
import { pinName } from "../pinName.ts";
import type { BoardPort, Level, Microseconds, PinMode, PinNumber, Verdict } from "../port.ts";
import type { WalkPin } from "./step.ts";

type Seen = Omit<WalkPin, "changed">;

/** Characters of the text that are kept. */
const mostText = 4000;

export class WatchedPort implements BoardPort {
  /** A new array with each change, so that whoever keeps one keeps that moment. */
  pins: readonly Seen[] = [];
  sent = "";
  /** Counts what changed at outputs. */
  changes = 0;
  private readonly port: BoardPort;
  private readonly latches = new Map<PinNumber, Level>();
  private tones: { readonly pin: PinNumber; readonly until: Microseconds } | null = null;
  openText?: (baud: number, now: Microseconds) => void;

  constructor(port: BoardPort) {
    this.port = port;
    if (port.openText !== undefined) this.openText = (baud, now) => port.openText!(baud, now);
  }

  nextEvent(): Microseconds {
    return this.port.nextEvent();
  }

  reach(now: Microseconds): Verdict {
    return this.port.reach(now);
  }

  /** A tone ends by itself; to be asked before the pins are looked at. */
  endTones(now: Microseconds): void {
    if (this.tones !== null && this.tones.until <= now) this.endTone(this.tones.pin);
  }

  private seen(pin: PinNumber): Seen {
    const name = pinName(pin);
    const fresh: Seen = { pin: name, mode: "input", level: null, duty: null, hz: null, degrees: null, read: null };
    return this.pins.find((p) => p.pin === name) ?? fresh;
  }

  private set(pin: PinNumber, change: Partial<Seen>, goesOut: boolean): void {
    const before = this.seen(pin);
    const after = { ...before, ...change };
    const keys = Object.keys(change) as (keyof Seen)[];
    if (this.pins.includes(before) && keys.every((key) => before[key] === after[key])) return;
    if (goesOut && keys.some((key) => before[key] !== after[key])) this.changes += 1;
    this.pins = [...this.pins.filter((p) => p !== before), after].sort((a, b) => order(a.pin) - order(b.pin));
  }

  digitalRead(pin: PinNumber, now: Microseconds): Level {
    const read = this.port.digitalRead(pin, now);
    this.set(pin, { read }, false);
    return read;
  }

  analogRead(pin: PinNumber, now: Microseconds): number {
    const read = this.port.analogRead(pin, now);
    this.set(pin, { read }, false);
    return read;
  }

  setMode(pin: PinNumber, mode: PinMode, now: Microseconds): void {
    this.port.setMode(pin, mode, now);
    const level = this.latches.get(pin) ?? 0;
    if (mode !== "output") this.latches.set(pin, mode === "pull-up" ? 1 : 0);
    // An output that begins low changes nothing that is seen.
    const isSeen = this.seen(pin).mode === "output" || (mode === "output" && level === 1);
    this.set(pin, { mode, level: mode === "output" ? shown(level) : null, duty: null }, isSeen);
  }

  digitalWrite(pin: PinNumber, level: Level, now: Microseconds): void {
    this.port.digitalWrite(pin, level, now);
    this.latches.set(pin, level);
    if (this.seen(pin).mode === "output") this.set(pin, { level: shown(level), duty: null }, true);
  }

  analogWrite(pin: PinNumber, value: number, hertz: number, now: Microseconds): void {
    this.port.analogWrite(pin, value, hertz, now);
    this.set(pin, { level: null, duty: value }, true);
  }

  duty(pin: PinNumber, value: number, now: Microseconds): void {
    this.port.duty?.(pin, value, now);
  }

  tone(pin: PinNumber, hertz: number, until: Microseconds, now: Microseconds): void {
    this.port.tone(pin, hertz, until, now);
    this.tones = { pin, until };
    this.set(pin, { level: null, hz: hertz }, true);
  }

  noTone(pin: PinNumber, now: Microseconds): void {
    this.port.noTone(pin, now);
    this.endTone(pin);
  }

  private endTone(pin: PinNumber): void {
    this.tones = null;
    const isOutput = this.seen(pin).mode === "output";
    this.set(pin, { hz: null, level: isOutput ? shown(this.latches.get(pin) ?? 0) : null }, true);
  }

  servo(pin: PinNumber, pulse: { readonly micros: number; readonly degrees: number } | null, now: Microseconds): void {
    this.port.servo(pin, pulse, now);
    this.set(pin, { level: null, degrees: pulse === null ? null : pulse.degrees }, true);
  }

  text(characters: string, now: Microseconds): void {
    this.port.text(characters, now);
    this.sent = (this.sent + characters).slice(-mostText);
  }

  takeText(now: Microseconds): string {
    return this.port.takeText(now);
  }
}

const shown = (level: Level) => (level === 1 ? "high" : "low");
/** D0..D13, A0..A5. */
const order = (pin: string) => (pin.startsWith("A") ? 14 : 0) + Number(pin.slice(1));
