// How long the USB cable may be before the chip no longer has what its clock needs, in the moment of the lesson that draws most.
//
// Cables of beginners' boards are mostly thin: AWG 28 loses 0.43 V a metre and ampere. The length is sought by halving.
// Does not know: whether data still pass through such a cable.
import { boardFacts, cableOhms } from "../parts/index.ts";
import { hasCable } from "./boardElements.ts";
import type { Build } from "./build.ts";
import type { CircuitShelf } from "./circuitShelf.ts";
import type { Segment } from "./run.ts";
import { setTable } from "./table.ts";

/** The thinnest power wires that USB 2.0 allows. */
const thinAwg = 28;
/** m. USB 2.0, section 6: no cable is longer than 5 m, from memory. */
export const longestMetres = 5;

/** @param fed the segments in which the board has power. @returns m, at most 5; 0 if none will do; null where there is no cable. */
export function longestCable(build: Build, fed: readonly Segment[], shelf: CircuitShelf): number | null {
  const phases = fed.flatMap((s) => s.scene.phases);
  const first = phases[0];
  if (!hasCable(build) || !first) return null;
  const worst = phases.reduce((a, b) => (b.point.rail < a.point.rail ? b : a), first).state;
  const carries = (metres: number) => {
    const circumstances = { ...build.circumstances, cableOhms: cableOhms(metres, thinAwg) };
    return setTable({ ...build, circumstances }, shelf).point(worst).rail >= boardFacts.chip.leastVoltsForClock.value;
  };
  if (carries(longestMetres)) return longestMetres;
  let [good, bad] = [0, longestMetres];
  if (!carries(good)) return 0;
  for (let i = 0; i < 10; i += 1) {
    const middle = (good + bad) / 2;
    if (carries(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
