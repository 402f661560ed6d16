// Coils that nothing catches when their current is cut: a relay, a motor, a bare inductor without a diode across it.
//
// At the moment of switching off the coil drives its voltage as high as it takes, through transistor or pin. That is faster than
// anything else here, so it is told from the wiring: a coil needs a diode between the same two nodes.
// Does not know: which way the diode stands (turned round it is a short when the coil is on, and found as one).
import type { Build, BuiltPart } from "./build.ts";
import type { Hazard } from "./result.ts";
import { ground } from "./wireUp.ts";

/** Legs between which a kind has its coil. */
const coilLegs: Readonly<Record<string, readonly [string, string]>> = {
  relay: ["coil1", "coil2"],
  "dc-motor": ["1", "2"],
  inductor: ["1", "2"],
};

export function findBareCoils(build: Build): readonly Omit<Hazard, "ms">[] {
  return [...build.parts.values()].flatMap((part) => {
    const legs = coilLegs[part.kind.id];
    const henries = part.kind.coilHenries?.(part.values);
    if (!legs || !henries) return [];
    const [a, b] = [build.wiring.node(part.name, legs[0]), build.wiring.node(part.name, legs[1])];
    if (a === b || !isSwitched(build, part, [a, b]) || hasDiode(build, a, b)) return [];
    return [
      {
        code: "coil-without-diode" as const,
        severity: "unsafe" as const,
        part: part.name,
        value: henries.value,
        limit: 0,
        unit: "V" as const,
        source: "common practice, no source: a coil that is switched needs a diode",
      },
    ];
  });
}

/** Whether something can cut its current: one end at least hangs on neither ground nor a supply. */
function isSwitched(build: Build, part: BuiltPart, ends: readonly string[]): boolean {
  const rails = new Set([ground, ...["5V", "3V3", "VIN", "USB"].map((leg) => build.wiring.node("board", leg))]);
  for (const other of build.parts.values())
    if (other.kind.supply) for (const leg of ["plus", "minus"]) rails.add(build.wiring.node(other.name, leg));
  return ends.some((node) => !rails.has(node) && (build.wiring.nodes.get(node) ?? []).some((leg) => leg.part !== part.name));
}

/** A diode between the two nodes, also one inside a driver chip. */
function hasDiode(build: Build, a: string, b: string): boolean {
  return [...build.parts.values()].some((part) =>
    part.kind
      .model(part.name, (leg) => build.wiring.node(part.name, leg), part.values, {})
      .some((e) => e.kind === "diode" && [e.anode, e.cathode].includes(a) && [e.anode, e.cathode].includes(b)),
  );
}
