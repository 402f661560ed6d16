// What the eye makes of the current through an LED: dark, dim, lit or too bright, and what is too fast to be seen.
//
// The eye cannot follow changes faster than about 50 a second (flicker fusion; common practice: the mark of 50 Hz). A light
// whose turn, on and off together, is shorter than 20 ms is seen steady at the mean of its current. A single flash or gap that is
// shorter is seen as bright as its light spread over those 20 ms (Bloch's law: intensity times duration).
// Does not know: blinking (steadiness.ts), why the current is what it is.
import { elementId, type Noticing } from "../parts/index.ts";
import { endsOf, type Run } from "./run.ts";
import type { Span } from "./span.ts";

type Light = Extract<Noticing, { sense: "light" }>;
type Band = "dark" | "dim" | "lit" | "too bright";
interface Piece {
  readonly from: number;
  readonly to: number;
  readonly amps: number;
  readonly band: Band;
}

/** s. A turn shorter than this looks steady. */
export const fusionSeconds = 0.02;

/** @returns spans without gaps from 0 to the end of the run; each with its mean current in A. */
export function seeLight(part: string, light: Light, run: Run): readonly Span[] {
  const id = elementId(part, light.element);
  const piece = (from: number, to: number, amps: number): Piece => ({ from, to, amps, band: bandOf(amps, light) });
  /** A current that goes over from one value to another is told apart where it passes the borders of the bands. */
  const rampPieces = (from: number, to: number, begin: number, end: number): readonly Piece[] => {
    const passed = [light.dimAmps, light.litAmps, light.tooBrightAmps].filter((b) => (b - begin) * (b - end) < 0);
    const stops = [begin, ...(begin < end ? passed : passed.reverse()), end];
    const at = (amps: number) => (begin === end ? to : from + ((to - from) * (amps - begin)) / (end - begin));
    return stops.slice(1).map((amps, i): Piece => {
      const before = stops[i] as number;
      const middle = (before + amps) / 2;
      return piece(i === 0 ? from : at(before), i === stops.length - 2 ? to : at(amps), middle);
    });
  };
  const pieces = run.segments.flatMap(({ from, to, scene }) => {
    const [begin, end] = endsOf(scene, (p) => p.amps(id));
    return begin === end ? [piece(from, to, end)] : rampPieces(from, to, begin, end);
  });
  const seen = merged(fused(merged(pieces, piece), piece), piece);
  return seen.map(({ from, to, amps, band }) => ({ from, to, seen: band, figures: { amps } }));
}

export function bandOf(amps: number, light: Pick<Light, "dimAmps" | "litAmps" | "tooBrightAmps">): Band {
  if (amps < light.dimAmps) return "dark";
  if (amps < light.litAmps) return "dim";
  return amps < light.tooBrightAmps ? "lit" : "too bright";
}

type Make = (from: number, to: number, amps: number) => Piece;

const meanAmps = (pieces: readonly Piece[]): number => {
  const first = pieces[0];
  const last = pieces.at(-1);
  if (!first || !last || last.to <= first.from) return first?.amps ?? 0;
  return pieces.reduce((sum, p) => sum + p.amps * (p.to - p.from), 0) / (last.to - first.from);
};

/** Neighbours of one band become one piece. */
function merged(pieces: readonly Piece[], make: Make): readonly Piece[] {
  const out: Piece[] = [];
  for (const piece of pieces) {
    const last = out.at(-1);
    if (piece.to <= piece.from) continue;
    if (last && last.band === piece.band)
      out[out.length - 1] = { ...make(last.from, piece.to, meanAmps([last, piece])), band: last.band };
    else out.push(piece);
  }
  return out;
}

/** Stretches of fast changes are cut into looks of about 20 ms, each at its mean. */
function fused(pieces: readonly Piece[], make: Make): readonly Piece[] {
  const turn = (i: number) => {
    const [a, b] = [pieces[i], pieces[i + 1]];
    return a && b ? b.to - a.from : Number.POSITIVE_INFINITY;
  };
  const isFast = (i: number) => Math.min(turn(i - 1), turn(i)) < fusionSeconds;
  const out: Piece[] = [];
  let look: Piece[] = [];
  const close = () => {
    const [first, last] = [look[0], look.at(-1)];
    if (first && last) out.push(make(first.from, last.to, meanAmps(look)));
    look = [];
  };
  for (const [i, piece] of pieces.entries()) {
    if (!isFast(i)) {
      close();
      const [before, after] = [pieces[i - 1], pieces[i + 1]];
      out.push(isShort(piece) && !isShort(before) && !isShort(after) ? spread(piece, before, after, make) : piece);
      continue;
    }
    look.push(piece);
    // A look ends with a whole turn, so that the mean does not beat against the looks.
    if (look.length % 2 === 0 && piece.to - (look[0]?.from ?? 0) >= fusionSeconds) close();
  }
  close();
  return out;
}

function isShort(piece: Piece | undefined): boolean {
  return piece !== undefined && piece.to - piece.from < fusionSeconds;
}

/** A single short piece, its light spread over 20 ms together with its neighbours'. */
function spread(piece: Piece, before: Piece | undefined, after: Piece | undefined, make: Make): Piece {
  const around = [before, after].flatMap((p) => (p ? [p.amps] : []));
  const share = (piece.to - piece.from) / fusionSeconds;
  const beside = around.length > 0 ? around.reduce((a, b) => a + b, 0) / around.length : piece.amps;
  return make(piece.from, piece.to, piece.amps * share + beside * (1 - share));
}
