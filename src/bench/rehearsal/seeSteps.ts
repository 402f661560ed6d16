// What a person sees of a rotor that goes step by step: turning, which way, or humming on the spot.
//
// Steps that follow each other within a quarter of a second look like turning (our choice: four steps a second are a clock's tick).
// Does not know: coils, why a step was lost.
import type { RotorStep } from "../parts/index.ts";
import { joinSpans, type Span } from "./span.ts";

/** s. A longer wait is a rest. */
const pauseSeconds = 0.25;

/** @returns spans without gaps from 0 to the end; each turning with its half steps and those that were lost. */
export function seeSteps(steps: readonly RotorStep[], end: number): readonly Span[] {
  const spans: Span[] = [];
  const rest = (from: number, to: number) => spans.push({ from, to, seen: "stopped", figures: {} });
  let at = 0;
  // The first tells only where it stands.
  for (let i = 1; i < steps.length; ) {
    const before = steps[i - 1]!;
    const begin = steps[i]!;
    const way = Math.sign(begin.halfSteps - before.halfSteps);
    const goesOn = (n: number): boolean => {
      const [last, next] = [steps[n - 1]!, steps[n]!];
      return next.at - last.at <= pauseSeconds && Math.sign(next.halfSteps - last.halfSteps) * way >= 0;
    };
    i += 1;
    while (i < steps.length && goesOn(i)) i += 1;
    const last = steps[i - 1]!;
    const [gone, lost] = [last.halfSteps - before.halfSteps, last.lost - before.lost];
    const to = Math.min(end, steps[i]?.at ?? end, last.at + pauseSeconds);
    rest(at, begin.at);
    // A rotor that loses as much as it goes trembles on the spot, whichever way it creeps. A step is two half steps.
    const seen = 2 * lost >= Math.abs(gone) ? "stalled" : gone > 0 ? "turning" : "turning back";
    spans.push({ from: begin.at, to, seen, figures: { halfSteps: Math.abs(gone), lost } });
    at = to;
  }
  rest(at, end);
  return joinSpans(spans);
}
