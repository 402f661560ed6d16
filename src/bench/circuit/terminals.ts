// The terminals of each kind of element, in the order in which currents are kept, and which pairs conduct.
//
// One table, so that the search for floating nodes, the currents of an operating point and the tests agree about it.
// Does not know: equations, values.
import type { Element, NodeName } from "./netlist.ts";

export type ElementKind = Element["kind"];

/** Names of the node fields. The current of an element (`amps`) is the one into its first terminal. */
export const terminals = {
  resistor: ["a", "b"],
  voltageSource: ["plus", "minus"],
  currentSource: ["from", "to"],
  diode: ["anode", "cathode"],
  npn: ["collector", "base", "emitter"],
  pnp: ["collector", "base", "emitter"],
  nmos: ["drain", "gate", "source"],
  pmos: ["drain", "gate", "source"],
  limitedSource: ["plus", "minus"],
  regulator: ["output", "input", "ground"],
  capacitor: ["a", "b"],
  inductor: ["a", "b"],
  switch: ["a", "b"],
  fuse: ["a", "b"],
  battery: ["plus", "minus"],
  motor: ["a", "b"],
} as const satisfies Record<ElementKind, readonly string[]>;

/** Terminals between which a steady current can flow. A gate, a capacitor and a current source fix no voltage. */
const conducting: Record<ElementKind, readonly string[]> = {
  ...terminals,
  currentSource: [],
  capacitor: [],
  nmos: ["drain", "source"],
  pmos: ["drain", "source"],
};

/** @returns the node at one terminal. */
export function nodeAt(element: Element, terminal: string): NodeName {
  return (element as unknown as Record<string, NodeName>)[terminal] as NodeName;
}

/** @returns the nodes of an element in the order of its terminals. */
export function nodesOf(element: Element): NodeName[] {
  return terminals[element.kind].map((terminal) => nodeAt(element, terminal));
}

/** @returns the nodes that an element joins by a path for steady current; empty or at least two. */
export function joinedNodes(element: Element): NodeName[] {
  return conducting[element.kind].map((terminal) => nodeAt(element, terminal));
}
