// Elements of a netlist with values that no part has, and names that two of them share.
//
// Does not know: which values are fit (findUnfitValues.ts).
import { findUnfitValues } from "./findUnfitValues.ts";
import type { Element } from "./netlist.ts";
import type { DcOutcome } from "./outcome.ts";

export type BadElement = Extract<DcOutcome, { status: "badElement" }>;

/** What is unfit, by id and field. Two elements of one name could not be told apart, so the second is unfit. */
export function findBadElements(elements: readonly Element[]): Map<string, BadElement> {
  const bad = new Map<string, BadElement>();
  const seen = new Set<string>();
  elements.forEach((element, index) => {
    const { id } = element;
    if (seen.has(id)) bad.set(`${id} id`, { status: "badElement", id, field: "id", value: index });
    seen.add(id);
    for (const wrong of findUnfitValues(element)) bad.set(`${id} ${wrong.field}`, { status: "badElement", id, ...wrong });
  });
  for (const { id, ...rest } of elements) {
    const coil = "coil" in rest ? rest.coil : undefined;
    if (coil !== undefined && !seen.has(coil))
      bad.set(`${id} coil`, { status: "badElement", id, field: "coil", value: Number.NaN });
  }
  return bad;
}
