// From the lesson's nets to the nodes of a circuit: which leg hangs on which node.
//
// Legs on one net are one node, and so are legs that a part joins inside (a button's "1" and "1b") and all GND pins of the
// board, whose node is ground, "0". A leg on no net gets a node of its own: nothing holds it, and the solver will say so.
// A node is named for the board's pin on it, else for the first leg in the lesson: that is the name a teacher is told.
// Does not know: values, states, what the parts do.

import type { NodeName } from "../circuit/index.ts";
import type { LegRef, Net } from "../lesson/index.ts";
import type { PartKind } from "../parts/index.ts";

export interface Wiring {
  /** The node of a leg; a node of its own if it is on no net. */
  node(part: string, leg: string): NodeName;
  /** Whether another leg hangs on the same node. */
  joined(part: string, leg: string): boolean;
  /** Every node with its legs, in the order of the lesson. */
  readonly nodes: ReadonlyMap<NodeName, readonly LegRef[]>;
}

/** Ground, as in SPICE. */
export const ground: NodeName = "0";

export function wireUp(parts: ReadonlyMap<string, PartKind>, nets: readonly Net[]): Wiring {
  const groups = new Map<string, LegRef[]>();
  const merge = (legs: readonly LegRef[]) => {
    const together = new Set<LegRef[]>();
    for (const leg of legs) together.add(groups.get(legId(leg)) ?? [leg]);
    const all = [...together].flat();
    for (const leg of all) groups.set(legId(leg), all);
  };
  for (const net of nets) merge(net.legs);
  for (const [part, kind] of parts) for (const legs of kind.joined ?? []) merge(legs.map((leg) => ({ part, leg })));
  merge([{ part: "board", leg: "GND" }]);

  const nodes = new Map<NodeName, readonly LegRef[]>();
  const names = new Map<string, NodeName>();
  for (const legs of new Set(groups.values())) {
    const name = nameOf(legs);
    nodes.set(name, legs);
    for (const leg of legs) names.set(legId(leg), name);
  }
  const node = (part: string, leg: string) => names.get(`${part}.${leg}`) ?? `${part}.${leg}`;
  return { node, joined: (part, leg) => (nodes.get(node(part, leg))?.length ?? 0) > 1, nodes };
}

function nameOf(legs: readonly LegRef[]): NodeName {
  if (legs.some((l) => l.part === "board" && l.leg === "GND")) return ground;
  const pin = legs.find((l) => l.part === "board") ?? legs[0];
  return pin ? legId(pin) : "";
}

function legId(leg: LegRef): string {
  return `${leg.part}.${leg.leg}`;
}
