// What the last accepted steps were, and what the next one may be wrong by.
//
// The local error of a step is what the rule leaves out: h²/2·x″ for backward Euler, h³/12·x‴ for the trapezoidal rule. The
// derivatives come from the mean rates of the last steps (what is stored now less what was, by the step's length); right after
// an edge the rate that the circuit tells, a capacitor's current, stands in for the first of them. Means are taken because a
// rate told by the circuit has the noise of its solution in it, which the smallest capacitors would make a thousandfold of.
// Does not know: circuits, when a step must end.
// Source: Nagel, SPICE2, memo UCB/ERL-M520 (1975), section on local truncation error.
import type { Equations, StoringFamily } from "./equations.ts";

/** Below this value of what is kept, V or A, the allowed error shrinks no further. */
const smallest = 0.1;

export class StepHistory {
  readonly #stores: readonly StoringFamily[];
  readonly #accuracy: number;
  readonly #count: number;
  /** What is stored at the last accepted point, and its rate there as the circuit tells it; the same one point earlier. */
  readonly #value: Float64Array;
  readonly #rate: Float64Array;
  readonly #rateBefore: Float64Array;
  /** Mean rates of the last step and of the one before it. */
  readonly #mean: Float64Array;
  readonly #meanBefore: Float64Array;
  /** The largest value so far: what the error is a share of. */
  readonly #scale: Float64Array;
  /** s. From the middle of the last step back to that of the one before, and on to its end. */
  #betweenMiddles = 0;
  #sinceMiddle = 0;
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
    this.#rateBefore = make();
    this.#mean = make();
    this.#meanBefore = make();
    this.#scale = make();
  }

  /** Forgets the way here: an edge. @param eq the circuit right after it. */
  begin(eq: Equations): void {
    this.smoothSteps = 0;
    this.#sinceMiddle = 0;
    this.#read(eq);
    this.#mean.set(this.#rate);
  }

  /** Takes the guess as a point of the way, `seconds` after the last one. */
  accept(eq: Equations, seconds: number): void {
    this.#meanBefore.set(this.#mean);
    this.#rateBefore.set(this.#rate);
    for (let at = 0; at < this.#count; at += 1) this.#mean[at] = this.#value[at] as number;
    this.#read(eq);
    for (let at = 0; at < this.#count; at += 1)
      this.#mean[at] = ((this.#value[at] as number) - (this.#mean[at] as number)) / seconds;
    this.#betweenMiddles = this.#sinceMiddle + seconds / 2;
    this.#sinceMiddle = seconds / 2;
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
    const between = this.#sinceMiddle + seconds / 2;
    for (const store of this.#stores) {
      for (let k = 0; k < store.count; k += 1, at += 1) {
        const value = store.value(eq, k);
        const bend = ((value - (this.#value[at] as number)) / seconds - (this.#mean[at] as number)) / between;
        let error = (seconds * seconds * bend) / 2;
        if (eq.slopes === 2) {
          const bendBefore = ((this.#mean[at] as number) - (this.#meanBefore[at] as number)) / this.#betweenMiddles;
          error = (seconds * seconds * seconds * (bend - bendBefore)) / (6 * (between + this.#betweenMiddles));
        }
        const share = Math.abs(error) / this.#allowed(at, value);
        if (!(share <= worst)) worst = share;
      }
    }
    return worst;
  }

  #allowed(at: number, value: number): number {
    return this.#accuracy * Math.max(this.#scale[at] as number, Math.abs(value), smallest);
  }

  /** Whether rates go up and down with every step, which is the trapezoidal rule's own doing and no circuit's. */
  swings(eq: Equations, seconds: number): boolean {
    let at = 0;
    for (const store of this.#stores) {
      for (let k = 0; k < store.count; k += 1, at += 1) {
        const last = this.#rate[at] as number;
        const up = store.rate(eq, k) - last;
        const down = last - (this.#rateBefore[at] as number);
        if (!(up * down < 0 && Math.abs(up) < 3 * Math.abs(down) && Math.abs(down) < 3 * Math.abs(up))) continue;
        if (seconds * Math.abs(up) > 20 * this.#allowed(at, store.value(eq, k))) return true;
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
