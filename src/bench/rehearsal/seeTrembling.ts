// A servo that trembles: it is told one angle and at once another, back and forth by a little, and never comes to rest.
//
// Beginners meet it with a knob that is read without smoothing, or with a sensor that wavers. Each of its moves alone is true and
// none is what a person sees, so at least four turnings back that follow each other quickly are told as one thing.
// Does not know: why it is told so, pulses.
import type { Move } from "./driveServo.ts";
import { joinSpans, type Span } from "./span.ts";

/** Degrees from one end to the other; more is waving, which a program may well want. Our choice. */
const mostSwing = 15;
/** s from one move to the next; slower ones are seen one by one. Our choice. */
const longestWait = 0.5;
/** Turnings back in a row. Our choice. */
const leastTurns = 4;

/** @param spans of one servo, without gaps. @param moves the same in degrees. @returns the spans, what trembles told as "trembling". */
export function seeTrembling(spans: readonly Span[], moves: readonly Move[]): readonly Span[] {
  const turns = moves.filter((m) => m.fromDegrees !== m.toDegrees && !m.stalled);
  let out = spans;
  for (let i = 0; i < turns.length; ) {
    const first = turns[i] as Move;
    let end = i;
    let [least, most] = [Math.min(first.fromDegrees, first.toDegrees), Math.max(first.fromDegrees, first.toDegrees)];
    for (;;) {
      const [last, next] = [turns[end] as Move, turns[end + 1]];
      if (!next || next.from - last.from > longestWait || wayOf(next) === wayOf(last)) break;
      const [low, high] = [Math.min(least, next.toDegrees), Math.max(most, next.toDegrees)];
      if (high - low > mostSwing) break;
      [least, most] = [low, high];
      end += 1;
    }
    if (end - i >= leastTurns && most - least <= mostSwing) {
      const [from, to] = [first.from, (turns[end] as Move).to];
      out = overlay(out, {
        from,
        to,
        seen: "trembling",
        figures: { degrees: Math.round((least + most) / 2), swing: Math.round(most - least) },
      });
    }
    i = end + 1;
  }
  return out;
}

function wayOf(move: Move): number {
  return Math.sign(move.toDegrees - move.fromDegrees);
}

function overlay(below: readonly Span[], above: Span): readonly Span[] {
  const rest = below.flatMap((s) => [
    { ...s, to: Math.min(s.to, above.from) },
    { ...s, from: Math.max(s.from, above.to) },
  ]);
  return joinSpans([...rest.filter((s) => s.to > s.from), above].sort((a, b) => a.from - b.from));
}
