// Coils that nothing catches when their current is cut: a relay, a motor, a bare inductor without a diode across it.
//
// At the moment of switching off the coil drives its voltage as high as it takes. All its energy L·I²/2 goes into the little
// capacitance that is there, C·V²/2, so the voltage reaches I·√(L/C): hundreds of volts from a coil that took 70 mA of 5 V. What
// switches it is stressed if it bears less. A diode between the same two nodes catches it.
// Does not know: which way the diode stands (turned round it is a short when the coil is on, and found as one).
import { boardFacts, elementId, type Sourced } from "../parts/index.ts";
import type { Build, BuiltPart } from "./build.ts";
import type { Hazard } from "./result.ts";
import type { Run } from "./run.ts";
import { ground } from "./wireUp.ts";

/** Legs between which a kind has its coil, and the element whose current is the coil's. */
const coils: Readonly<Record<string, { readonly legs: readonly [string, string]; readonly element?: string }>> = {
  relay: { legs: ["coil1", "coil2"], element: "coil" },
  "dc-motor": { legs: ["1", "2"] },
  inductor: { legs: ["1", "2"] },
};

/** F of winding, wires and an open switch together. From memory: 50–200 pF. */
const strayFarads = 100e-12;
/** V that a contact bears for which nothing else is said. */
const contactVolts: Sourced<number> = { value: 24, source: "data sheets of 6 × 6 mm push buttons: 5–24 V DC" };

export function findBareCoils(build: Build, runs: readonly Run[]): readonly Omit<Hazard, "ms">[] {
  return [...build.parts.values()].flatMap((part) => {
    const coil = coils[part.kind.id];
    const henries = part.kind.coilHenries?.(part.values);
    if (!coil || !henries) return [];
    const [a, b] = [build.wiring.node(part.name, coil.legs[0]), build.wiring.node(part.name, coil.legs[1])];
    const cut = cutEnds(build, part, [a, b]);
    if (a === b || cut.length === 0) return [];
    const catches = catchersOf(build, a, b);
    if (catches.length > 0) return weakCatchers(catches, ampsOf(build, part, elementId(part.name, coil.element), runs));
    const value = ampsOf(build, part, elementId(part.name, coil.element), runs) * Math.sqrt(henries.value / strayFarads);
    const bears = cut.map((node) => whatBears(build, part, node)).reduce((x, y) => (y.value < x.value ? y : x));
    if (value <= bears.value) return [];
    const source = `energy of the coil into 100 pF; ${bears.source}`;
    return [
      {
        code: "coil-without-diode" as const,
        severity: "unsafe" as const,
        part: part.name,
        value,
        limit: bears.value,
        unit: "V" as const,
        source,
      },
    ];
  });
}

/** Parts whose coil can be cut and is caught by no diode, however much or little it would do. */
export function uncaughtCoils(build: Build): ReadonlySet<string> {
  const bare = [...build.parts.values()].filter((part) => {
    const coil = coils[part.kind.id];
    if (!coil) return false;
    const [a, b] = [build.wiring.node(part.name, coil.legs[0]), build.wiring.node(part.name, coil.legs[1])];
    return a !== b && cutEnds(build, part, [a, b]).length > 0 && !hasDiode(build, a, b);
  });
  return new Set(bare.map((part) => part.name));
}

/** The most that flows through it in the rehearsal; what 5 V would drive through it where the rehearsal never switches it on. */
function ampsOf(build: Build, part: BuiltPart, id: string, runs: readonly Run[]): number {
  const points = new Set(runs.flatMap((run) => run.segments.flatMap((s) => s.scene.phases.map((p) => p.point))));
  const seen = Math.max(0, ...[...points].map((p) => Math.abs(p.amps(id))));
  if (seen > 1e-6) return seen;
  const element = part.kind
    .model(part.name, (leg) => build.wiring.node(part.name, leg), part.values, {})
    .find((e) => e.id === id && e.kind === "resistor");
  return element?.kind === "resistor" ? boardFacts.supplyVolts.value / element.ohms : 0;
}

/** The ends at which something can cut its current: those that hang on neither ground nor a supply. */
function cutEnds(build: Build, part: BuiltPart, ends: readonly string[]): readonly string[] {
  const rails = new Set([ground, ...["5V", "3V3", "VIN", "USB"].map((leg) => build.wiring.node("board", leg))]);
  for (const other of build.parts.values())
    if (other.kind.supply) for (const leg of ["plus", "minus"]) rails.add(build.wiring.node(other.name, leg));
  return ends.filter((node) => !rails.has(node) && (build.wiring.nodes.get(node) ?? []).some((leg) => leg.part !== part.name));
}

/** V that the weakest thing at the end bears which is cut. */
function whatBears(build: Build, coil: BuiltPart, node: string): Sourced<number> {
  const limits = (build.wiring.nodes.get(node) ?? []).flatMap(({ part }): readonly Sourced<number>[] => {
    if (part === coil.name) return [];
    if (part === "board") {
      const { beyondRailVolts } = boardFacts.pin;
      return [{ value: boardFacts.supplyVolts.value + beyondRailVolts.value, source: beyondRailVolts.source }];
    }
    const other = build.parts.get(part);
    return (other?.kind.limits(other.values) ?? []).flatMap((l) => (l.what === "volts" && l.unsafe ? [l.unsafe] : []));
  });
  return limits.reduce((least, l) => (l.value < least.value ? l : least), limits[0] ?? contactVolts);
}

/** A diode that catches a coil carries for a moment all that the coil carried: at worst what it takes in its start. */
function weakCatchers(catches: readonly BuiltPart[], amps: number): readonly Omit<Hazard, "ms">[] {
  return catches.flatMap((part) => {
    const limit = part.kind.limits(part.values).find((l) => l.what === "amps" && l.element === undefined)?.unsafe;
    if (!limit || amps <= limit.value) return [];
    const told = { part: part.name, value: amps, limit: limit.value, unit: "A", source: limit.source } as const;
    return [{ code: "part-overcurrent", severity: "caution", ...told } as const];
  });
}

function hasDiode(build: Build, a: string, b: string): boolean {
  return catchersOf(build, a, b).length > 0;
}

/** Parts with a diode between the two nodes, also one inside a driver chip. */
function catchersOf(build: Build, a: string, b: string): readonly BuiltPart[] {
  return [...build.parts.values()].filter((part) =>
    part.kind
      .model(part.name, (leg) => build.wiring.node(part.name, leg), part.values, {})
      .some((e) => e.kind === "diode" && [e.anode, e.cathode].includes(a) && [e.anode, e.cathode].includes(b)),
  );
}
