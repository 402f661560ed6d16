// The instants at which switching pins turn over, one by one: what PWM, tones and servo pulses really do within their turns.
//
// A rehearsal looks at a switching pin by the shares of its turn (pinPhases.ts); whoever draws a waveform, or follows a capacitor
// behind such a pin, needs the edges themselves, in order.
// Does not know: volts, why a pin switches.
import type { SwitchingPin } from "./run.ts";

/** A stretch without an edge: what every pin drives in it, see `Drive`. Seconds. */
export interface Turn {
  readonly from: number;
  readonly to: number;
  readonly drives: string;
}

/** Share of a turn below which an instant counts as the edge itself. */
const sameEdge = 1e-9;

/** @returns whether a switching pin is high right after an instant. */
export function isHigh({ hertz, duty, since }: SwitchingPin, seconds: number): boolean {
  const turns = (seconds - since) * hertz + sameEdge;
  return turns - Math.floor(turns) < duty;
}

/** @returns the first instant after `seconds` at which a switching pin turns over; infinite where it never does. */
export function nextEdge({ hertz, duty, since }: SwitchingPin, seconds: number): number {
  if (duty <= 0 || duty >= 1) return Number.POSITIVE_INFINITY;
  const turns = (seconds - since) * hertz + sameEdge;
  const whole = Math.floor(turns);
  return since + (turns - whole < duty ? whole + duty : whole + 1) / hertz;
}

/** @returns what the pins drive right after an instant. @param drives the letters of the pins that do not switch. */
export function drivesAt(drives: string, switching: readonly SwitchingPin[], seconds: number): string {
  const letters = [...drives];
  for (const pin of switching) letters[pin.pin] = isHigh(pin, seconds) ? "1" : "0";
  return letters.join("");
}

/** The stretches between edges from one instant to another, in order and without gaps. */
export function* turnsOf(drives: string, switching: readonly SwitchingPin[], from: number, to: number): Generator<Turn> {
  for (let at = from; at < to; ) {
    const end = Math.min(to, ...switching.map((pin) => nextEdge(pin, at)));
    yield { from: at, to: end, drives: drivesAt(drives, switching, at) };
    at = end;
  }
}
