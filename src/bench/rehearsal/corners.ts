// The corners of the tolerances: every part at the end of its range that drives some figure furthest.
//
// For each current through a light, each voltage at an input and the supply, the derivative against every tolerance tells which
// way makes the figure least or most. Those corners, not all 2^n, are rehearsed. Random tables besides check that no corner
// was missed; one that does worse is told as a sample.
// Does not know: whether a corner works.
import { seededRandom } from "../../base/index.ts";
import { boardFacts, elementId, type PartValues } from "../parts/index.ts";
import { type Build, type BuildChoice, type Circumstances, makeBuild } from "./build.ts";
import type { VariantWhat } from "./result.ts";
import type { Run } from "./run.ts";
import { type Point, setTable, type TableState } from "./table.ts";

export type Corner = Extract<VariantWhat, { kind: "corner" }>;

/** A figure that really differs from its printed value. */
interface Spread {
  /** "R1.ohms", "board.fuseOhms". */
  readonly name: string;
  readonly least: number;
  readonly usual: number;
  readonly most: number;
}

/** Corners beyond this many say nothing new; the first are those of the lights. */
const mostCorners = 24;

/** @param run the nominal run, whose states are varied. */
export function findCorners(build: Build, choice: BuildChoice, run: Run): readonly Corner[] {
  const spreads = spreadsOf(build);
  const states = [...new Map(run.segments.flatMap((s) => s.scene.phases).map((p) => [p.point.key, p.state])).values()];
  const usual = figuresOf(build, states);
  const signs = new Map(usual.map(([name]) => [name, [] as number[]]));
  for (const spread of spreads) {
    const end = spread.most > spread.usual ? spread.most : spread.least;
    const moved = makeBuild(build.lesson, choiceAt(choice, { [spread.name]: end })).build;
    if (!moved) return [];
    for (const [i, [name, value]] of figuresOf(moved, states).entries()) {
      const change = value - (usual[i]?.[1] ?? value);
      signs.get(name)?.push(Math.abs(change) < 1e-9 ? 0 : Math.sign(change) * Math.sign(end - spread.usual));
    }
  }
  const corners = new Map<string, Corner>();
  for (const [name, way] of signs)
    for (const [word, sign] of [["least", -1] as const, ["most", 1] as const]) {
      const key = way.map((s) => s * sign).join();
      if (way.every((s) => s === 0) || corners.has(key) || corners.size >= mostCorners) continue;
      const values = Object.fromEntries(
        spreads.flatMap((s, i) => (way[i] ? [[s.name, (way[i] ?? 0) * sign > 0 ? s.most : s.least]] : [])),
      );
      corners.set(key, { kind: "corner", corner: `${word} ${name}`, values });
    }
  return [...corners.values()];
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
  return [...board, ...parts];
}

/** The figures that decide what is seen, read and borne, in every state: lights first. */
function figuresOf(build: Build, states: readonly TableState[]): readonly (readonly [name: string, value: number])[] {
  const table = setTable(build);
  const lights = [...build.parts.values()].flatMap((part) =>
    part.kind.noticed(part.values).flatMap((n) => (n.sense === "light" ? [elementId(part.name, n.element)] : [])),
  );
  const inputs = table.pins.map((pin, i) => ({ pin, node: build.wiring.node("board", pin), i }));
  const figures = states.flatMap((state, k) => {
    const point: Point = table.point(state);
    const name = (what: string) => `${what} ${k + 1}`;
    return [
      ...lights.map((id) => ({ rank: 0, name: name(`${id}.amps`), value: point.amps(id) })),
      ...inputs
        .filter(({ i }) => state.drives[i] === "i" || state.drives[i] === "u")
        // A share of the supply, as the chip judges it.
        .map(({ pin, node }) => ({
          rank: 1,
          name: name(`${pin}.volts`),
          value: point.rail > 0 ? point.volts(node) / point.rail : 0,
        })),
      { rank: 2, name: name("5V.volts"), value: point.rail },
      { rank: 3, name: name("supply.amps"), value: point.supplyAmps },
    ];
  });
  return figures.sort((a, b) => a.rank - b.rank).map((f) => [f.name, f.value] as const);
}
