// Virtual time in cycles of 16 MHz, and the looking up that has to be done on the way.
//
// Running code only adds to `time[0]` and compares it with `time[1]`, the next moment at which something may happen: an event
// of the port, an alarm of our own, the end of the run, too much work. All else is done here, so that code between two such
// moments runs at full speed. Both numbers lie in a typed array because V8 changes those in place.
// Does not know: pins, text, what the code does.
import type { BoardPort, Microseconds } from "../port.ts";
import { Halt } from "./halt.ts";

/** 16 MHz. */
export const cyclesPerMicro = 16;
export const cyclesPerMilli = 16_000;

/** Timer 0 counts at a 64th of the clock and overflows after 256 counts: 1024 µs (ATmega328P data sheet, section 15). */
const overflowCycles = 64 * 256;

/** A port that names the same moment again and again would stop time; after this often it is not asked any more. */
const mostAtOnce = 10_000;

interface Alarm {
  readonly at: number;
  readonly ring: () => void;
}

export class Clock {
  /** [0] cycles since the run began; [1] when `look` is due. */
  readonly time = new Float64Array(2);
  /** When something may happen next; `time[1]` is sooner if too much work is done before. */
  due = 0;
  /** Cycles that passed without work: waits and skipped rounds. */
  idle = 0;
  /** When the board last left reset. */
  boot = 0;
  /** When text has to be handed over, and how; it is handed over before the port is told of a moment. */
  nextText: () => number = () => Number.POSITIVE_INFINITY;
  handOver: (cycles: number) => void = () => undefined;
  /** Called after the port has been told: pins may have changed. */
  afterReach: () => void = () => undefined;
  private readonly port: BoardPort;
  private readonly until: number;
  private readonly mostWork: number;
  private alarms: Alarm[] = [];
  private stuck = 0;

  /** @param until in cycles. @param mostWork cycles that may be worked, beside those that are waited. */
  constructor(port: BoardPort, until: number, mostWork: number) {
    this.port = port;
    this.until = until;
    this.mostWork = mostWork;
  }

  now(): Microseconds {
    return this.time[0]! / cyclesPerMicro;
  }

  /** Lets the cycles of an operation pass. */
  spend(cycles: number): void {
    this.time[0] = this.time[0]! + cycles;
  }

  /** Brings the world up to the present if anything is due. To be called before anything is read or changed outside. */
  sync(): void {
    if (this.time[0]! >= this.time[1]!) this.look(0);
  }

  /** @param line where the program is, if it can be said to hang there; 0 where not. */
  look(line: number): void {
    const { time } = this;
    for (;;) {
      const now = time[0]!;
      if (line > 0 && now - this.idle > this.mostWork) throw new Halt({ why: "hangs", line });
      const event = this.stuck > mostAtOnce ? Number.POSITIVE_INFINITY : this.port.nextEvent() * cyclesPerMicro;
      const alarm = this.alarms[0]?.at ?? Number.POSITIVE_INFINITY;
      const text = this.nextText();
      const next = Math.min(event, alarm, text);
      if (next > now || next > this.until) {
        if (now >= this.until) {
          time[0] = this.until;
          this.handOver(this.until);
          throw new Halt({ why: "stop" });
        }
        this.due = Math.min(next, this.until);
        this.watchWork();
        return;
      }
      this.handOver(next);
      if (text <= event && text <= alarm) continue;
      if (alarm <= event) this.alarms.shift()!.ring();
      else this.reach(event);
    }
  }

  private reach(event: number): void {
    const verdict = this.port.reach(event / cyclesPerMicro);
    this.stuck = this.port.nextEvent() * cyclesPerMicro <= event ? this.stuck + 1 : 0;
    if (verdict !== "go on") {
      // What the program has done since then changed nothing outside, and does not count.
      this.time[0] = event;
      throw new Halt({ why: verdict });
    }
    this.afterReach();
  }

  private watchWork(): void {
    this.time[1] = Math.min(this.due, this.idle + this.mostWork + 1);
  }

  /** Waits without work until a moment, with everything that happens on the way. */
  waitUntil(target: number): void {
    while (this.due <= target) {
      this.jump(this.due);
      this.look(0);
    }
    this.jump(target);
    this.watchWork();
  }

  wait(cycles: number): void {
    this.waitUntil(this.time[0]! + cycles);
  }

  /** Lets time come to a moment before which nothing happens. */
  jump(target: number): void {
    const passed = target - this.time[0]!;
    if (passed <= 0) return;
    this.idle += passed;
    this.time[0] = target;
  }

  /** Rings once, at a moment that is not past. */
  setAlarm(at: number, ring: () => void): void {
    this.alarms.push({ at, ring });
    this.alarms.sort((a, b) => a.at - b.at);
    this.expect(at);
  }

  /** Makes sure that `look` is not due later than this. */
  expect(at: number): void {
    if (at < this.due) this.due = at;
    if (at < this.time[1]!) this.time[1] = at;
  }

  /** After the outside was read or changed: what may happen next may be sooner than it was. */
  heed(): void {
    this.expect(this.port.nextEvent() * cyclesPerMicro);
  }

  /** The board begins anew: after its first cycles its timers start from zero. */
  restart(cycles: number): void {
    this.spend(cycles);
    this.boot = this.time[0]!;
    this.alarms = [];
    this.expect(this.time[0]!);
  }

  /**
   * What `millis` reads: one more for each overflow of timer 0, and one more whenever the 24 µs that each of them is longer
   * than a millisecond have added up. Held as 32 bits.
   */
  millis(): number {
    const overflows = Math.floor((this.time[0]! - this.boot) / overflowCycles);
    return (overflows + Math.floor((overflows * 3) / 125)) | 0;
  }

  /** What `micros` reads: steps of 4 µs. Held as 32 bits. */
  micros(): number {
    return ((Math.floor((this.time[0]! - this.boot) / 64) * 4) % 4294967296) | 0;
  }

  /** The moment at which `millis` will have counted `more` further. */
  whenMillis(more: number): number {
    const overflows = Math.floor((this.time[0]! - this.boot) / overflowCycles);
    const target = overflows + Math.floor((overflows * 3) / 125) + more;
    // overflows + floor(overflows·3/125) = floor(overflows·128/125) ≥ target, so overflows ≥ target·125/128.
    return this.boot + Math.ceil((target * 125) / 128) * overflowCycles;
  }

  /** The moment at which `micros` will have counted `more` further. */
  whenMicros(more: number): number {
    const counts = Math.floor((this.time[0]! - this.boot) / 64);
    return this.boot + (counts + Math.ceil(more / 4)) * 64;
  }
}
