// The board's supply from moment to moment: does the chip have enough, does the fuse hold, and what can nobody foresee.
//
// The chip resets below its brown-out level; between that and what its clock needs nobody knows what it does. A supply that is
// asked for more than it promises, and a fuse between hold and trip, may hold or give way: the scenario decides, and the doubt
// is told. A resettable fuse is slow, so what counts for it is current that lasts.
// Does not know: programs, parts, what is done about a reset.
import { boardFacts } from "../parts/index.ts";
import type { Build } from "./build.ts";
import { lastingSeconds } from "./findHeat.ts";
import type { Doubt } from "./result.ts";
import { extremeOf, meanOf, type Scenario, type Scene } from "./run.ts";

/**
 * s that a resettable fuse bears a current. What heats it is the square of the current over that which it holds for ever, and it
 * opens when so much heat is gathered; data sheet 1206L050: at most 0.1 s at 8 A. A small excess would take minutes, so what
 * lasts is taken to last for as long as that.
 */
export function fusePatience(amps: number): number {
  const { holdAmps, sheetAmps, sheetSeconds } = boardFacts.fuse;
  const heat = sheetSeconds.value * (sheetAmps.value ** 2 - holdAmps.value ** 2);
  return Math.min(lastingSeconds, heat / Math.max(1e-9, amps ** 2 - holdAmps.value ** 2));
}

/** What the arithmetic may add to a current that is exactly at its limit. */
const slack = 1e-9;

export interface SupplyVerdict {
  /** Whether the chip can run: enough voltage, and nobody holds RESET low. */
  readonly runs: boolean;
  /** Whether what happens is beyond what anybody promises. */
  readonly isDoubtful: boolean;
  /** The figures of that doubt, without its moment. */
  readonly doubts: readonly Omit<Doubt, "ms">[];
  /** When to ask again even if nothing changes, s; Infinity if never. */
  readonly askAgainAt: number;
}

export interface SupplyWatch {
  /** To be asked after every change, in the order of time. */
  judge(scene: Scene, now: number): SupplyVerdict;
  /** Whether the fuse has opened; a resettable one closes only when it has cooled, which a lesson does not wait for. */
  readonly fuseIsOpen: boolean;
}

export function watchSupply(build: Build, scenario: Scenario): SupplyWatch {
  const { brownOutVolts, leastVoltsForClock } = boardFacts.chip;
  const { holdAmps, tripAmps } = boardFacts.fuse;
  const promised = build.supply.facts.limitAmps?.value ?? Number.POSITIVE_INFINITY;
  const leastVolts = scenario.supply === "holds" ? brownOutVolts.value : leastVoltsForClock.value;
  const opensAbove = scenario.supply === "holds" ? tripAmps.value : holdAmps.value;
  const resetIsWired = build.wiring.joined("board", "RESET");
  let aboveHoldSince: number | null = null;
  let aboveOpenSince: number | null = null;
  let fuseIsOpen = false;

  return {
    get fuseIsOpen() {
      return fuseIsOpen;
    },
    judge(scene, now) {
      const rail = extremeOf(scene, Math.min, (p) => p.rail);
      const resetShare = resetIsWired
        ? extremeOf(scene, Math.min, (p) => p.volts(build.wiring.node("board", "RESET")) / p.rail)
        : 1;
      const runs = scene.on && rail >= leastVolts && resetShare >= boardFacts.pin.lowShare.value;
      const isBetween = scene.on && rail < leastVoltsForClock.value && rail >= brownOutVolts.value;
      const isOver = extremeOf(scene, Math.max, (p) => p.supplyAmps) > promised * (1 + slack);

      const fuseAmps = meanOf(scene, (p) => p.fuseAmps);
      aboveHoldSince = fuseAmps > holdAmps.value ? (aboveHoldSince ?? now) : null;
      aboveOpenSince = fuseAmps > opensAbove ? (aboveOpenSince ?? now) : null;
      const lasts = (since: number | null) => since !== null && now - since >= fusePatience(fuseAmps) - slack;
      if (lasts(aboveOpenSince)) fuseIsOpen = true;
      const waits = aboveHoldSince !== null && !lasts(aboveHoldSince);
      const isHeld = lasts(aboveHoldSince) && fuseAmps <= tripAmps.value;
      return {
        runs,
        isDoubtful: isBetween || isOver || lasts(aboveHoldSince),
        doubts: [
          ...(isBetween ? [chipBetween(rail)] : []),
          ...(isOver
            ? [
                supplyOver(
                  build,
                  extremeOf(scene, Math.max, (p) => p.supplyAmps),
                ),
              ]
            : []),
          ...(isHeld ? [fuseBetween(fuseAmps)] : []),
        ],
        askAgainAt: waits ? (aboveHoldSince ?? now) + fusePatience(fuseAmps) : Number.POSITIVE_INFINITY,
      };
    },
  };
}

function chipBetween(rail: number): Omit<Doubt, "ms"> {
  const { brownOutVolts, leastVoltsForClock } = boardFacts.chip;
  const [least, most] = [brownOutVolts.value, leastVoltsForClock.value];
  return {
    code: "chip-between",
    place: "board",
    value: rail,
    least,
    most,
    unit: "V",
    steps: null,
    source: leastVoltsForClock.source,
  };
}

function supplyOver(build: Build, amps: number): Omit<Doubt, "ms"> {
  const { item, facts } = build.supply;
  const [most, source] = [facts.limitAmps?.value ?? null, facts.limitAmps?.source ?? ""];
  return { code: "supply-over", place: item, value: amps, least: null, most, unit: "A", steps: null, source };
}

function fuseBetween(amps: number): Omit<Doubt, "ms"> {
  const { holdAmps, tripAmps } = boardFacts.fuse;
  const [least, most] = [holdAmps.value, tripAmps.value];
  return { code: "fuse-between", place: "board", value: amps, least, most, unit: "A", steps: null, source: holdAmps.source };
}
