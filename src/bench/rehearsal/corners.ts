// The corners of the tolerances: every part at the end of its range that drives some figure furthest.
//
// For each current through a light, each voltage at an input and the supply, the derivative against every tolerance tells which
// way makes the figure least or most, and stepping from end to end mends what the derivative got wrong. Those corners, not all
// 2^n, are rehearsed. Random tables besides check that no corner was missed; one that does worse is told as a sample.
// Does not know: whether a corner works.
import { seededRandom } from "../../base/index.ts";
import { boardFacts, catalogue, elementId, type PartValues } from "../parts/index.ts";
import { hasCable } from "./boardElements.ts";
import { type Build, type BuildChoice, type Circumstances, makeBuild } from "./build.ts";
import { type CircuitShelf, circuitShelf } from "./circuitShelf.ts";
import type { VariantWhat } from "./result.ts";
import type { Run } from "./run.ts";
import { type Point, setTable, type Table, type TableState } from "./table.ts";

export type Corner = Extract<VariantWhat, { kind: "corner" }>;

/** A figure that really differs from its printed value. */
interface Spread {
  /** "R1.ohms", "board.fuseOhms". */
  readonly name: string;
  readonly least: number;
  readonly usual: number;
  readonly most: number;
}

/** Corners beyond this many are left out; the first are those of the lights. */
const mostCorners = 40;
/** Times that every spread is tried at its other end; what is still found then is noise. */
const mostSweeps = 4;

/**
 * @param run the nominal run, whose states are varied. @param shelf the circuits that are ready.
 * @returns for every figure in every state the corner at which it is least and that at which it is most, each corner once.
 */
export function findCorners(
  build: Build,
  choice: BuildChoice,
  run: Run,
  shelf: CircuitShelf = circuitShelf(),
): readonly Corner[] {
  const spreads = spreadsOf(build);
  const states = statesOf(run);
  const tableAt = (ends: readonly number[]) => {
    const made = makeBuild(build.lesson, choiceAt(choice, valuesAt(spreads, ends))).build;
    return made ? setTable(made, shelf) : null;
  };
  const usual = figuresOf(build, states);
  const start = setTable(build, shelf);
  const moved = spreads.map((_, i) => tableAt(spreads.map((_, k) => (k === i ? 1 : 0))));
  const corners = new Map<string, Corner>();
  for (const figure of usual) {
    const value = figure.value(start);
    const way = moved.map((table) => {
      const change = table ? figure.value(table) - value : 0;
      return Math.abs(change) <= noise(value) ? 0 : Math.sign(change);
    });
    for (const [word, sign] of [["least", -1] as const, ["most", 1] as const]) {
      if (way.every((w) => w === 0) || corners.size >= mostCorners) continue;
      const ends = climb(
        way.map((w) => w * sign),
        (at) => {
          const table = tableAt(at);
          return table ? sign * figure.value(table) : Number.NEGATIVE_INFINITY;
        },
      );
      const key = ends.join();
      if (!corners.has(key))
        corners.set(key, { kind: "corner", corner: `${word} ${figure.name}`, values: valuesAt(spreads, ends) });
    }
  }
  return [...corners.values()];
}

/**
 * The signs of the derivatives say which way to go from the middle; in a bridge a sign may have turned by the time one is there.
 * So each spread is tried at its other end, until no such step helps.
 * @param ends −1, 0 or 1 for each spread. @param score what is to be most.
 */
function climb(ends: readonly number[], score: (ends: readonly number[]) => number): readonly number[] {
  let best = ends;
  let most = score(best);
  for (let sweep = 0; sweep < mostSweeps; sweep += 1) {
    const before = best;
    for (const [i, end] of best.entries()) {
      if (end === 0) continue;
      const other = best.map((e, k) => (k === i ? -e : e));
      const value = score(other);
      if (value <= most + noise(most)) continue;
      [best, most] = [other, value];
    }
    if (best === before) break;
  }
  return best;
}

function valuesAt(spreads: readonly Spread[], ends: readonly number[]): Readonly<Record<string, number>> {
  return Object.fromEntries(
    spreads.flatMap((s, i) => {
      const end = ends[i] ?? 0;
      return end === 0 ? [] : [[s.name, end > 0 ? s.most : s.least]];
    }),
  );
}

/** What the arithmetic may make of nothing: a dark LED's nanoamperes count, the last digits of a volt do not. */
function noise(value: number): number {
  return 1e-12 + 1e-9 * Math.abs(value);
}

/** Every electrical state of a run once. */
export function statesOf(run: Run): readonly TableState[] {
  return [...new Map(run.segments.flatMap((s) => s.scene.phases).map((p) => [p.point.key, p.state])).values()];
}

/** Tables as chance makes them: half of them at ends of the ranges, half anywhere between. */
export function sampleCorners(build: Build, count: number, seed: number): readonly Corner[] {
  const random = seededRandom(seed, "tolerances");
  const spreads = spreadsOf(build);
  return Array.from({ length: count }, (_, i) => {
    const values = spreads.map((s) => {
      const at = i % 2 === 0 ? random.int(0, 1) : random.next();
      return [s.name, s.least * (s.most / s.least) ** at] as const;
    });
    return { kind: "corner", corner: `sample ${i + 1}`, values: Object.fromEntries(values) };
  });
}

/** @param values by "R1.ohms" or "board.fuseOhms". @returns the choice with these figures in place of the usual ones. */
export function choiceAt(choice: BuildChoice, values: Readonly<Record<string, number>>): BuildChoice {
  const parts = new Map<string, PartValues>(choice.values);
  const circumstances: Partial<Record<keyof Circumstances, number>> = { ...choice.circumstances };
  for (const [name, value] of Object.entries(values)) {
    const point = name.lastIndexOf(".");
    const [part, parameter] = [name.slice(0, point), name.slice(point + 1)];
    if (part === "board") circumstances[parameter as keyof Circumstances] = value;
    else parts.set(part, { ...parts.get(part), [parameter]: value });
  }
  return { ...choice, values: parts, circumstances };
}

function spreadsOf(build: Build): readonly Spread[] {
  const { pin, fuse } = boardFacts;
  const c = build.circumstances;
  const [least, , most] = build.supply.facts.volts.value;
  const board: Spread[] = [
    { name: "board.supplyVolts", least, usual: c.supplyVolts, most },
    { name: "board.outputOhms", least: c.outputOhms, usual: c.outputOhms, most: pin.worstOutputOhms.value },
    { name: "board.pullUpOhms", least: pin.leastPullUpOhms.value, usual: c.pullUpOhms, most: pin.mostPullUpOhms.value },
    { name: "board.fuseOhms", least: fuse.leastOhms.value, usual: c.fuseOhms, most: fuse.mostOhms.value },
  ];
  // A cable that nobody has measured: from short and thick to long and thin.
  const cable = catalogue.get("usb-cable")?.figures;
  if (hasCable(build) && cable?.leastOhms && cable.mostOhms)
    board.push({ name: "board.cableOhms", least: cable.leastOhms.value, usual: c.cableOhms, most: cable.mostOhms.value });
  const unwritten = [...build.parts.values()].flatMap((part) =>
    Object.entries(part.kind.spreads?.(part.values) ?? {}).map(([figure, { value }]): Spread => {
      const own = part.values[figure];
      return { name: `${part.name}.${figure}`, least: value[0], usual: typeof own === "number" ? own : value[1], most: value[2] };
    }),
  );
  const parts = [...build.parts.values()].flatMap((part) =>
    Object.entries(part.kind.parameters).flatMap(([parameter, spec]): Spread[] => {
      const value = part.values[parameter];
      // A lesson's own `tolerance` goes before.
      const own = part.values.tolerance;
      const share = spec.tolerance ? (typeof own === "number" ? own : spec.tolerance.value) : 0;
      if (typeof value !== "number" || value <= 0 || share <= 0) return [];
      return [{ name: `${part.name}.${parameter}`, least: value * (1 - share), usual: value, most: value * (1 + share) }];
    }),
  );
  return [...board, ...parts, ...unwritten];
}

/** A figure of one state, to be asked of any table of the same wiring. */
export interface Figure {
  /** "LED1.amps 5": what, and the number of the state. */
  readonly name: string;
  readonly value: (table: Table) => number;
}

/** The figures that decide what is seen, read and borne, in every state: lights first. */
export function figuresOf(build: Build, states: readonly TableState[]): readonly Figure[] {
  const lights = [...build.parts.values()].flatMap((part) =>
    part.kind.noticed(part.values).flatMap((n) => (n.sense === "light" ? [elementId(part.name, n.element)] : [])),
  );
  const { pins } = setTable(build);
  const inputs = pins.map((pin, i) => ({ pin, node: build.wiring.node("board", pin), i }));
  const figures = states.flatMap((state, k) => {
    const figure = (rank: number, what: string, value: (point: Point) => number) => ({
      rank,
      name: `${what} ${k + 1}`,
      value: (table: Table) => value(table.point(state)),
    });
    return [
      ...lights.map((id) => figure(0, `${id}.amps`, (point) => point.amps(id))),
      ...inputs
        .filter(({ i }) => state.drives[i] === "i" || state.drives[i] === "u")
        // A share of the supply, as the chip judges it.
        .map(({ pin, node }) => figure(1, `${pin}.volts`, (point) => (point.rail > 0 ? point.volts(node) / point.rail : 0))),
      figure(2, "5V.volts", (point) => point.rail),
      figure(3, "supply.amps", (point) => point.supplyAmps),
    ];
  });
  return figures.sort((a, b) => a.rank - b.rank);
}
