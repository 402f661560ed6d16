// The serial port: characters leave one by one at the speed that was set, out of a buffer of 64; what arrives waits in another.
//
// Printing costs no time until the buffer is full; then the program waits for room, as on the chip. The speed is the one that
// the chip's divider really makes (ATmega328P data sheet, section 19.3.1): 9600 is 9615.
// Does not know: numbers, what is printed.
import type { BoardPort } from "../port.ts";
import { fromBytes, toBytes } from "../read/utf8.ts";
import { type Clock, cyclesPerMicro } from "./clock.ts";

/** 63 in the ring of 64, one in the data register, one being shifted out. */
const mostLeaving = 65;
const mostArrived = 63;

export class SerialLine {
  private isOpen = false;
  /** Cycles of a character: a start bit, eight, a stop bit. */
  private characterCycles = 0;
  /** Characters on their way out, and when each will have left. */
  private leaving = "";
  private leavingAt: number[] = [];
  /** Bytes of a character that is not complete yet. */
  private cut = "";
  private arrived = "";
  /** How long readers wait for more, in ms. */
  patience = 1000;
  effects = 0;
  private readonly clock: Clock;
  private readonly port: BoardPort;

  constructor(clock: Clock, port: BoardPort) {
    this.clock = clock;
    this.port = port;
  }

  begin(baud: number): void {
    this.clock.sync();
    this.effects += 1;
    // Characters that came before the port was open are lost.
    this.port.takeText(this.clock.now());
    this.arrived = "";
    let factor = 8;
    let divider = Math.floor((Math.floor((2_000_000 / Math.max(1, baud)) * 2) - 1) / 2);
    if (baud === 57600 || divider > 4095) {
      factor = 16;
      divider = Math.floor((Math.floor(2_000_000 / Math.max(1, baud)) - 1) / 2);
    }
    this.characterCycles = 10 * factor * (Math.max(0, divider) + 1);
    this.isOpen = true;
    this.port.openText?.(baud, this.clock.now());
  }

  end(): void {
    this.flush();
    this.effects += 1;
    this.isOpen = false;
    this.arrived = "";
  }

  /** Sends bytes. Before `begin` they are lost. */
  write(bytes: string): void {
    this.effects += 1;
    if (!this.isOpen) return;
    for (let i = 0; i < bytes.length; i += 1) {
      const full = this.leavingAt.length - mostLeaving;
      if (full >= 0) this.clock.waitUntil(this.leavingAt[full]!);
      const start = Math.max(this.clock.time[0]!, this.leavingAt.at(-1) ?? 0);
      this.leaving += bytes[i]!;
      this.leavingAt.push(start + this.characterCycles);
      this.clock.spend(writeCycles);
    }
    this.clock.expect(this.nextHandOver());
  }

  /** When something is to be handed over: the end of the first line on its way, or of all there is. */
  nextHandOver(): number {
    const lineEnd = this.leaving.indexOf("\n");
    return this.leavingAt[lineEnd < 0 ? this.leavingAt.length - 1 : lineEnd] ?? Number.POSITIVE_INFINITY;
  }

  /** Gives the port what has left by then, line by line, each at the moment of its last character. */
  handOver(until: number): void {
    while (this.leavingAt.length > 0 && this.leavingAt[0]! <= until) {
      const lineEnd = this.leaving.indexOf("\n");
      let count = lineEnd < 0 ? this.leavingAt.length : lineEnd + 1;
      while (this.leavingAt[count - 1]! > until) count -= 1;
      const { text, rest } = fromBytes(this.cut + this.leaving.slice(0, count), true);
      const at = this.leavingAt[count - 1]! / cyclesPerMicro;
      this.cut = rest;
      this.leaving = this.leaving.slice(count);
      this.leavingAt.splice(0, count);
      if (text !== "") this.port.text(text, at);
    }
  }

  /** Everything that was printed, even if the run ends before it has left: for a program that breaks off. */
  handOverAll(): void {
    this.handOver(Number.POSITIVE_INFINITY);
    if (this.cut !== "") this.port.text(fromBytes(this.cut).text, this.clock.now());
    this.cut = "";
  }

  /** What was printed and has not left yet. */
  onItsWay(): string {
    return fromBytes(this.cut + this.leaving).text;
  }

  room(): number {
    this.clock.sync();
    const now = this.clock.time[0]!;
    return Math.max(0, Math.min(63, mostLeaving - this.leavingAt.filter((at) => at > now).length));
  }

  flush(): void {
    const last = this.leavingAt.at(-1);
    if (last !== undefined) this.clock.waitUntil(last);
    this.handOver(this.clock.time[0]!);
  }

  /** Takes in what has arrived; what does not fit into the buffer is lost. @returns how many characters wait. */
  available(): number {
    this.clock.sync();
    if (this.isOpen) this.arrived = (this.arrived + toBytes(this.port.takeText(this.clock.now()))).slice(0, mostArrived);
    return this.arrived.length;
  }

  peek(): number {
    return this.available() > 0 ? this.arrived.charCodeAt(0) : -1;
  }

  read(): number {
    const c = this.peek();
    if (c >= 0) {
      this.arrived = this.arrived.slice(1);
      this.effects += 1;
    }
    return c;
  }

  /** Waits for a character, as long as patience lasts. @returns it without taking it, or −1. */
  waitForOne(): number {
    this.effects += 1;
    const end = this.clock.time[0]! + this.patience * 16_000;
    for (;;) {
      const c = this.peek();
      if (c >= 0 || this.clock.time[0]! >= end) return c;
      this.clock.waitUntil(Math.min(end, this.clock.due));
    }
  }

  reset(): void {
    this.isOpen = false;
    this.leaving = "";
    this.leavingAt = [];
    this.cut = "";
    this.arrived = "";
    this.patience = 1000;
  }
}

/** Cycles of putting one character into the buffer (measured in simavr). */
const writeCycles = 72;
