// External interrupts of pins 2 and 3: a function of the program runs when a level changes.
//
// The clock tells when the world has moved; levels are compared then, so an interrupt comes at the moment of the change, also
// in the middle of a delay. While one runs, or between noInterrupts() and interrupts(), another is remembered, once.
// Does not know: how functions run.
import type { BoardPort, Level } from "../port.ts";
import type { Clock } from "./clock.ts";

/** As the program writes it: LOW 0, CHANGE 1, FALLING 2, RISING 3. */
export type InterruptMode = 0 | 1 | 2 | 3;

interface Watch {
  readonly pin: number;
  readonly run: () => void;
  readonly mode: InterruptMode;
  level: Level;
  isPending: boolean;
}

/** Saving registers, the jump and the way back (measured in simavr). */
const entryCycles = 90;

export class Interrupts {
  private watches: (Watch | null)[] = [null, null];
  private isOn = true;
  private isRunning = false;
  private readonly clock: Clock;
  private readonly port: BoardPort;

  constructor(clock: Clock, port: BoardPort) {
    this.clock = clock;
    this.port = port;
  }

  /** @param number 0 for pin 2, 1 for pin 3; others are passed over. */
  attach(number: number, mode: InterruptMode, run: () => void): void {
    if (number !== 0 && number !== 1) return;
    const pin = number + 2;
    this.watches[number] = { pin, run, mode, level: this.port.digitalRead(pin, this.clock.now()), isPending: false };
  }

  detach(number: number): void {
    if (number === 0 || number === 1) this.watches[number] = null;
  }

  setOn(isOn: boolean): void {
    this.isOn = isOn;
    if (isOn) this.run();
  }

  /** Compares levels with those before. */
  watch(): void {
    for (const w of this.watches) {
      if (w === null) continue;
      const level = this.port.digitalRead(w.pin, this.clock.now());
      const rises = level === 1 && w.level === 0;
      const falls = level === 0 && w.level === 1;
      w.level = level;
      if (w.mode === 3 ? rises : w.mode === 1 ? rises || falls : falls) w.isPending = true;
    }
    this.run();
  }

  private run(): void {
    if (!this.isOn || this.isRunning) return;
    for (;;) {
      const w = this.watches.find((k) => k?.isPending);
      if (!w) return;
      w.isPending = false;
      this.isRunning = true;
      this.clock.spend(entryCycles);
      w.run();
      this.isRunning = false;
    }
  }

  reset(): void {
    this.watches = [null, null];
    this.isOn = true;
    this.isRunning = false;
  }
}
