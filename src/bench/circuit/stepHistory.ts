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
  /** What is stored at the last accepted point, and its rate there as the circuit tells it; its rate one point earlier. */
  #value: Float64Array;
  #rate: Float64Array;
  #rateBefore: Float64Array;
  /** The same at the guess that was judged last. */
  #guessValue: Float64Array;
  #guessRate: Float64Array;
  /** Mean rates of the last step and of the one before it. */
  #mean: Float64Array;
  #meanBefore: Float64Array;
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
    this.#guessValue = make();
    this.#guessRate = make();
    this.#mean = make();
    this.#meanBefore = make();
    this.#scale = make();
  }

  /** Forgets the way here: an edge. @param eq the circuit right after it. */
  begin(eq: Equations): void {
    this.smoothSteps = 0;
    this.#sinceMiddle = 0;
    this.#read(eq);
    this.#takeGuess();
    this.#mean.set(this.#rate);
  }

  /** Takes the guess that was judged last as a point of the way, `seconds` after the one before. */
  accept(seconds: number): void {
    const means = this.#meanBefore;
    this.#meanBefore = this.#mean;
    this.#mean = means;
    for (let at = 0; at < this.#count; at += 1)
      means[at] = ((this.#guessValue[at] as number) - (this.#value[at] as number)) / seconds;
    this.#takeGuess();
    this.#betweenMiddles = this.#sinceMiddle + seconds / 2;
    this.#sinceMiddle = seconds / 2;
    this.smoothSteps += 1;
  }

  #read(eq: Equations): void {
    let at = 0;
    for (const store of this.#stores) {
      store.read(eq, this.#guessValue, this.#guessRate, at);
      at += store.count;
    }
  }

  /** The arrays change places, so that nothing is copied. */
  #takeGuess(): void {
    const value = this.#guessValue;
    const rate = this.#guessRate;
    for (let at = 0; at < this.#count; at += 1) {
      const size = Math.abs(value[at] as number);
      if (size > (this.#scale[at] as number)) this.#scale[at] = size;
    }
    this.#guessValue = this.#value;
    this.#value = value;
    this.#guessRate = this.#rateBefore;
    this.#rateBefore = this.#rate;
    this.#rate = rate;
  }

  /** The largest error of the step of `seconds` to the present guess, in units of what is allowed. */
  error(eq: Equations, seconds: number): number {
    this.#read(eq);
    const between = this.#sinceMiddle + seconds / 2;
    let worst = 0;
    for (let at = 0; at < this.#count; at += 1) {
      const change = (this.#guessValue[at] as number) - (this.#value[at] as number);
      const bend = (change / seconds - (this.#mean[at] as number)) / between;
      let error = (seconds * seconds * bend) / 2;
      if (eq.slopes === 2) {
        const bendBefore = ((this.#mean[at] as number) - (this.#meanBefore[at] as number)) / this.#betweenMiddles;
        error = (seconds * seconds * seconds * (bend - bendBefore)) / (6 * (between + this.#betweenMiddles));
      }
      const share = Math.abs(error) / this.#allowed(at);
      if (!(share <= worst)) worst = share;
    }
    return worst;
  }

  #allowed(at: number): number {
    return this.#accuracy * Math.max(this.#scale[at] as number, Math.abs(this.#guessValue[at] as number), smallest);
  }

  /**
   * Whether the rates at the guess that was judged last go up and down with every step, which is the trapezoidal rule's own
   * doing and no circuit's.
   */
  swings(seconds: number): boolean {
    for (let at = 0; at < this.#count; at += 1) {
      const last = this.#rate[at] as number;
      const up = (this.#guessRate[at] as number) - last;
      const down = last - (this.#rateBefore[at] as number);
      if (!(up * down < 0 && Math.abs(up) < 3 * Math.abs(down) && Math.abs(down) < 3 * Math.abs(up))) continue;
      if (seconds * Math.abs(up) > 20 * this.#allowed(at)) return true;
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
