// The day and the minute, moving.
//
// Does not know: whose day it is; the demo has its own.
import { type ReadonlySignal, signal } from "@preact/signals";
import { type Day, parseDay } from "../../base/index.ts";

export interface Time {
  readonly day: ReadonlySignal<Day>;
  /** Minutes after midnight. */
  readonly minute: ReadonlySignal<number>;
  readonly stop: () => void;
}

/** How often the clock is looked at, ms. */
const lookEvery = 5000;

export function startTime(now: () => Date): Time {
  const day = signal(dayOf(now()));
  const minute = signal(minuteOf(now()));
  const timer = setInterval(() => {
    const at = now();
    day.value = dayOf(at);
    minute.value = minuteOf(at);
  }, lookEvery);
  return { day, minute, stop: () => clearInterval(timer) };
}

/** The day on the wall of whoever looks. */
export function dayOf(at: Date): Day {
  const text = [at.getFullYear(), at.getMonth() + 1, at.getDate()].map((n) => String(n).padStart(2, "0")).join("-");
  // A clock that stands in no year that days are written for counts as the first of them.
  return parseDay(text) ?? ("1970-01-01" as Day);
}

export const minuteOf = (at: Date): number => at.getHours() * 60 + at.getMinutes();
