// What the last accepted steps were, and what the next one may be wrong by.
//
// The local error of a step is what the rule leaves out: h²/2·x″ for backward Euler, h³/12·x‴ for the trapezoidal rule. The
// derivatives come from differences of the rates that the circuit itself tells (a capacitor's current is its rate), so that
// one step after an edge is enough to judge by.
// Does not know: circuits, when a step must end.
// Source: Nagel, SPICE2, memo UCB/ERL-M520 (1975), section on local truncation error.
import type { Equations, StoringFamily } from "./equations.ts";

/** Below this value of what is kept, V or A, the allowed error shrinks no further. */
const smallest = 0.1;

export class StepHistory {
  readonly #stores: readonly StoringFamily[];
  readonly #accuracy: number;
  readonly #count: number;
  // At the last accepted point and the one before it.
  readonly #value: Float64Array;
  readonly #rate: Float64Array;
  readonly #valueBefore: Float64Array;
  readonly #rateBefore: Float64Array;
  /** The largest value so far: what the error is a share of. */
  readonly #scale: Float64Array;
  #seconds = 0;
  /** Accepted steps since the last edge. */
  smoothSteps = 0;

  /** @param accuracy share of the largest value so far that one step may be wrong by. */
  constructor(stores: readonly StoringFamily[], accuracy: number) {
    this.#stores = stores;
    this.#accuracy = accuracy;
    this.#count = stores.reduce((sum, { count }) => sum + count, 0);
    const make = () => new Float64Array(this.#count);
    this.#value = make();
    this.#rate = make();
    this.#valueBefore = make();
    this.#rateBefore = make();
    this.#scale = make();
  }

  /** Forgets the way here: an edge. @param eq the circuit right after it. */
  begin(eq: Equations): void {
    this.smoothSteps = 0;
    this.#read(eq);
  }

  /** Takes the guess as a point of the way. */
  accept(eq: Equations, seconds: number): void {
    this.#valueBefore.set(this.#value);
    this.#rateBefore.set(this.#rate);
    this.#read(eq);
    this.#seconds = seconds;
    this.smoothSteps += 1;
  }

  #read(eq: Equations): void {
    let at = 0;
    for (const store of this.#stores) {
      for (let k = 0; k < store.count; k += 1, at += 1) {
        const value = store.value(eq, k);
        this.#value[at] = value;
        this.#rate[at] = store.rate(eq, k);
        this.#scale[at] = Math.max(this.#scale[at] as number, Math.abs(value));
      }
    }
  }

  /** The largest error of the step of `seconds` to the present guess, in units of what is allowed. */
  error(eq: Equations, seconds: number): number {
    let worst = 0;
    let at = 0;
    const before = this.#seconds;
    for (const store of this.#stores) {
      for (let k = 0; k < store.count; k += 1, at += 1) {
        const rate = store.rate(eq, k);
        const last = this.#rate[at] as number;
        let error: number;
        if (eq.slopes === 2) {
          const bend = (rate - last) / seconds - (last - (this.#rateBefore[at] as number)) / before;
          error = (seconds ** 3 * bend) / (6 * (seconds + before));
        } else if (this.smoothSteps === 0) error = (seconds * (rate - last)) / 2;
        else {
          // The mean rate of the last step, not the one at its end, which may still swing.
          const mean = ((this.#value[at] as number) - (this.#valueBefore[at] as number)) / before;
          error = (seconds ** 2 * (rate - mean)) / (seconds + before);
        }
        const share =
          Math.abs(error) / (this.#accuracy * Math.max(this.#scale[at] as number, Math.abs(store.value(eq, k)), smallest));
        if (!(share <= worst)) worst = share;
      }
    }
    return worst;
  }

  /** Whether rates go up and down with every step, which is the trapezoidal rule's own doing and no circuit's. */
  swings(eq: Equations): boolean {
    let at = 0;
    for (const store of this.#stores) {
      for (let k = 0; k < store.count; k += 1, at += 1) {
        const last = this.#rate[at] as number;
        const up = store.rate(eq, k) - last;
        const down = last - (this.#rateBefore[at] as number);
        if (up * down < 0 && Math.abs(up) < 3 * Math.abs(down) && Math.abs(down) < 3 * Math.abs(up)) return true;
      }
    }
    return false;
  }

  /** s. A first step after an edge that changes nothing by more than a few hundredths of what is allowed. */
  firstStep(): number {
    let shortest = Number.POSITIVE_INFINITY;
    for (let at = 0; at < this.#count; at += 1) {
      const rate = Math.abs(this.#rate[at] as number);
      const change = Math.sqrt(this.#accuracy) * Math.max(this.#scale[at] as number, smallest);
      if (rate > 0) shortest = Math.min(shortest, change / rate);
    }
    return shortest;
  }
}
