// How much of a battery's charge a lesson can use, before its voltage sags below what the chip needs.
//
// A battery that is not empty may still be too weak: four cells at VIN lose 1.9 V in diode and regulator, and have only a little
// to give before 16 MHz are no longer allowed. Its voltage is taken to fall evenly from its usual to its least value, and its
// resistance to rise evenly to three times (both simplifications from memory; real curves are steeper at their ends).
// Does not know: capacity, hours.
import { boardFacts } from "../parts/index.ts";
import type { Build } from "./build.ts";
import type { CircuitShelf } from "./circuitShelf.ts";
import type { Segment } from "./run.ts";
import { setTable } from "./table.ts";

/** Times the resistance of a fresh one that a nearly empty one has. From memory. */
const wornFactor = 3;

/** @param fed the segments in which the board has power. @returns 0..1; 1 for a supply that lasts to its last drop. */
export function usableShare(build: Build, fed: readonly Segment[], shelf: CircuitShelf): number {
  const phases = fed.flatMap((s) => s.scene.phases);
  const first = phases[0];
  if (!first) return 0;
  const worst = phases.reduce((a, b) => (b.point.rail < a.point.rail ? b : a), first).state;
  const [least, usual] = build.supply.facts.volts.value;
  const railAfter = (share: number) => {
    const supplyVolts = usual - share * (usual - least);
    const supplyOhms = build.circumstances.supplyOhms * (1 + share * (wornFactor - 1));
    return setTable({ ...build, circumstances: { ...build.circumstances, supplyVolts, supplyOhms } }, shelf).point(worst).rail;
  };
  const carries = (share: number) => railAfter(share) >= boardFacts.chip.leastVoltsForClock.value;
  if (carries(1)) return 1;
  let [good, bad] = [0, 1];
  for (let i = 0; i < 12; i += 1) {
    const middle = (good + bad) / 2;
    if (carries(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
