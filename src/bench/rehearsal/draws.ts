// Currents that a part draws by itself, by what it is doing: a servo at rest, at its start, moving, held fast.
//
// The catalogue gives them at the least voltage of the part's data sheet. A motor that starts or is held is its winding's
// resistance, so each is put into the circuit as the resistance that draws that current there: at a sagging supply it draws less.
// Does not know: when a part does what (followParts.ts).
import type { Element } from "../circuit/index.ts";
import type { Build, BuiltPart } from "./build.ts";

/** @returns the id of the element: "SERVO1.draw". */
export function drawElementId(part: string): string {
  return `${part}.draw`;
}

/** @param doing one of the part's `draws`; what it draws when nothing is said is `idle`. */
export function drawElements(build: Build, part: BuiltPart, doing = "idle"): readonly Element[] {
  const amps = part.kind.draws?.(part.values)[doing]?.value ?? 0;
  const a = build.wiring.node(part.name, "plus");
  const b = build.wiring.node(part.name, "minus");
  if (amps <= 0 || a === b) return [];
  return [{ kind: "resistor", id: drawElementId(part.name), a, b, ohms: drawVolts(part) / amps }];
}

/** V at which the catalogue's currents of this part hold: the least that its data sheet allows, else 5 V. */
export function drawVolts(part: BuiltPart): number {
  return part.kind.figures.leastVolts?.value ?? 5;
}
