// The board's pins as the program's functions see them: mode, latch, pulse width, and what the port is told.
//
// As on the chip, mode and latch are two registers: OUTPUT after HIGH is high at once, HIGH on an input switches its pull-up on
// (ATmega328P data sheet, table 14-1). The port hears of changes only, so that a loop that writes the same level again and again
// does nothing.
// Does not know: circuits, who plays the world.
import type { BoardPort, Level, PinMode, PinNumber } from "../port.ts";
import { type Clock, cyclesPerMicro, cyclesPerMilli } from "./clock.ts";

/** Pins 5 and 6 hang on timer 0 in fast mode, the others on timers in phase-correct mode (data sheet, chapters 15, 16, 18). */
const pwmHertz: Readonly<Record<number, number>> = {
  3: 16e6 / 64 / 510,
  5: 16e6 / 64 / 256,
  6: 16e6 / 64 / 256,
  9: 16e6 / 64 / 510,
  10: 16e6 / 64 / 510,
  11: 16e6 / 64 / 510,
};

export const pinCount = 20;

/** The port gives the value against 5 V; against 1.1 V it is so much larger. */
const internalGain = 5 / 1.1;

export interface Tone {
  readonly pin: PinNumber;
  readonly hertz: number;
  /** Cycles; Infinity if nobody says when. */
  readonly until: number;
}

export class Pins {
  /** What each pin was set to; null as reset leaves it. */
  private modes: (PinMode | null)[] = [];
  private latches: Level[] = [];
  private duties: (number | null)[] = [];
  private tone: Tone | null = null;
  private hasConverted = false;
  /** Whether the converter compares with the chip's own 1.1 V in place of the supply. */
  private isInternal = false;
  /** Things that happened outside because of the program, counted: a loop that changes this is no mere wait. */
  effects = 0;
  private readonly clock: Clock;
  private readonly port: BoardPort;

  constructor(clock: Clock, port: BoardPort) {
    this.clock = clock;
    this.port = port;
    this.clear();
  }

  private clear(): void {
    this.modes = new Array<PinMode | null>(pinCount).fill(null);
    this.latches = new Array<Level>(pinCount).fill(0);
    this.duties = new Array<number | null>(pinCount).fill(null);
    this.tone = null;
    this.hasConverted = false;
    this.isInternal = false;
  }

  /** Reset: all pins become inputs without pull-up, sound and pulses end. */
  reset(): void {
    const now = this.clock.now();
    if (this.tone !== null) this.port.noTone(this.tone.pin, now);
    for (let pin = 0; pin < pinCount; pin += 1)
      if ((this.modes[pin] ?? "input") !== "input") this.port.setMode(pin, "input", now);
    this.clear();
  }

  private isPin(pin: PinNumber): boolean {
    return pin >= 0 && pin < pinCount;
  }

  isOutput(pin: PinNumber): boolean {
    return this.modes[pin] === "output";
  }

  latch(pin: PinNumber): Level {
    return this.latches[pin] ?? 0;
  }

  /** Whether setting this mode would change nothing. */
  isSet(pin: PinNumber, mode: PinMode): boolean {
    if (!this.isPin(pin)) return true;
    return this.modes[pin] === mode && (mode === "output" || this.latches[pin] === (mode === "pull-up" ? 1 : 0));
  }

  /** Pins that are not there are passed over, as the board's functions do. */
  setMode(pin: PinNumber, mode: PinMode): void {
    if (!this.isPin(pin)) return;
    this.clock.sync();
    if (mode !== "output") this.latches[pin] = mode === "pull-up" ? 1 : 0;
    if (this.modes[pin] === mode) return;
    this.effects += 1;
    this.modes[pin] = mode;
    this.port.setMode(pin, mode, this.clock.now());
    this.clock.heed();
  }

  /** Whether writing this level would change nothing. */
  isWritten(pin: PinNumber, level: Level): boolean {
    return !this.isPin(pin) || (this.duties[pin] === null && this.latches[pin] === level);
  }

  write(pin: PinNumber, level: Level): void {
    if (!this.isPin(pin)) return;
    this.clock.sync();
    if (this.isWritten(pin, level)) return;
    this.effects += 1;
    this.duties[pin] = null;
    this.latches[pin] = level;
    const now = this.clock.now();
    if (this.modes[pin] !== "output") {
      this.modes[pin] = level === 1 ? "pull-up" : "input";
      this.port.setMode(pin, this.modes[pin]!, now);
    }
    this.port.digitalWrite(pin, level, now);
    this.clock.heed();
  }

  /** A pin that is read stops its pulses first, as the board's function does. */
  read(pin: PinNumber): Level {
    if (!this.isPin(pin)) return 0;
    this.clock.sync();
    if (this.duties[pin] !== null) {
      this.effects += 1;
      this.duties[pin] = null;
      this.port.digitalWrite(pin, this.latches[pin]!, this.clock.now());
    }
    const level = this.port.digitalRead(pin, this.clock.now());
    this.clock.heed();
    return level;
  }

  canPulse(pin: PinNumber): boolean {
    return pwmHertz[pin] !== undefined;
  }

  /** @returns whether this is its first conversion since reset, which takes longer. */
  startConverter(): boolean {
    const isFirst = !this.hasConverted;
    this.hasConverted = true;
    return isFirst;
  }

  isPulsing(pin: PinNumber): boolean {
    return this.isPin(pin) && this.duties[pin] !== null;
  }

  /** @param pin 0..7 or 14..: the converter's channel. */
  readAnalog(pin: number): number {
    const channel = (pin >= 14 ? pin - 14 : pin) & 7;
    // Channels 6 and 7 are not brought out.
    if (channel > 5) return 0;
    this.clock.sync();
    const value = this.port.analogRead(14 + channel, this.clock.now());
    this.clock.heed();
    return this.isInternal ? Math.min(1023, Math.floor((value + 0.5) * internalGain)) : value;
  }

  /** 3 is the chip's own reference (data sheet, table 24-3); every other mode here is the supply. */
  setReference(mode: number): void {
    this.isInternal = mode === 3;
    this.effects += 1;
  }

  /** Timer 1 compares 16 bits and never meets a value above its top; the others take the low byte. */
  private dutyOf(pin: PinNumber, value: number): number {
    if (pwmHertz[pin] === undefined) return value < 128 ? 0 : 255;
    if (pin === 9 || pin === 10) return value < 0 || value > 255 ? 255 : value;
    return value & 255;
  }

  /** Whether writing this value would change nothing. */
  isAnalogWritten(pin: PinNumber, value: number): boolean {
    if (!this.isPin(pin)) return true;
    if (!this.isSet(pin, "output")) return false;
    const duty = this.dutyOf(pin, value);
    return duty === 0 || duty === 255 ? this.isWritten(pin, duty === 0 ? 0 : 1) : this.duties[pin] === duty;
  }

  writeAnalog(pin: PinNumber, value: number): void {
    if (!this.isPin(pin)) return;
    this.setMode(pin, "output");
    const duty = this.dutyOf(pin, value);
    this.clock.sync();
    this.port.duty?.(pin, value, this.clock.now());
    if (duty === 0 || duty === 255) {
      this.write(pin, duty === 0 ? 0 : 1);
      return;
    }
    if (this.duties[pin] === duty) return;
    this.effects += 1;
    this.duties[pin] = duty;
    this.port.analogWrite(pin, duty, pwmHertz[pin]!, this.clock.now());
    this.clock.heed();
  }

  /** Whether this very tone, without an end, sounds already: starting it again changes nothing that is heard. */
  isSounding(pin: PinNumber, hertz: number, milliseconds: number): boolean {
    const { tone } = this;
    return (
      milliseconds === 0 && tone !== null && tone.pin === pin && tone.hertz === hertz && tone.until === Number.POSITIVE_INFINITY
    );
  }

  /** @param milliseconds 0: until told otherwise. One pin sounds at a time; a call for another is passed over. */
  startTone(pin: PinNumber, hertz: number, milliseconds: number): void {
    if (!this.isPin(pin) || this.isSounding(pin, hertz, milliseconds)) return;
    this.clock.sync();
    const now = this.clock.time[0]!;
    if (this.tone !== null && this.tone.until > now && this.tone.pin !== pin) return;
    this.setMode(pin, "output");
    this.effects += 1;
    if (hertz === 0) {
      this.endTone(pin);
      return;
    }
    const until = milliseconds === 0 ? Number.POSITIVE_INFINITY : now + milliseconds * cyclesPerMilli;
    this.tone = { pin, hertz, until };
    this.port.tone(pin, hertz, until / cyclesPerMicro, this.clock.now());
    this.clock.heed();
  }

  /** Whether there is nothing to end. */
  isSilent(pin: PinNumber): boolean {
    return this.tone?.pin !== pin && this.isWritten(pin, 0);
  }

  endTone(pin: PinNumber): void {
    if (!this.isPin(pin)) return;
    this.clock.sync();
    if (this.tone?.pin === pin) {
      this.effects += 1;
      this.tone = null;
      this.port.noTone(pin, this.clock.now());
    }
    this.write(pin, 0);
  }
}
