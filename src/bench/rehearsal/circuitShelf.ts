// Circuits of one wiring are prepared once and kept, so that another value costs two or three passes and nothing else.
//
// All builds of a lesson, at all corners and with all values, have the same few wirings: one for each way in which pins drive
// and contacts stand. Getting one ready costs more than solving it, so they are shared between builds.
// Does not know: parts, pins.
import { type DcOutcome, type Element, nodesOf, type PreparedCircuit, prepareCircuit } from "../circuit/index.ts";

export interface CircuitShelf {
  solve(elements: readonly Element[]): DcOutcome;
  /** How many circuits were solved. */
  readonly solves: number;
  /** How many wirings were prepared. */
  readonly wirings: number;
}

interface Kept {
  readonly circuit: PreparedCircuit;
  values: readonly Element[];
}

export function circuitShelf(): CircuitShelf {
  const kept = new Map<string, Kept>();
  let solves = 0;
  return {
    get solves() {
      return solves;
    },
    get wirings() {
      return kept.size;
    },
    solve(elements) {
      solves += 1;
      const key = wiringOf(elements);
      const known = kept.get(key);
      if (!known) {
        const circuit = prepareCircuit({ elements });
        kept.set(key, { circuit, values: elements });
        return circuit.solve();
      }
      for (const [i, element] of elements.entries()) takeValues(known.circuit, element, known.values[i]);
      known.values = elements;
      return known.circuit.solve();
    },
  };
}

/** Which elements hang on which nodes, in order; a number that is only sometimes there belongs to it. */
export function wiringOf(elements: readonly Element[]): string {
  let key = "";
  for (const element of elements) {
    key += `${element.id}:${element.kind}${Object.keys(element).length}`;
    for (const node of nodesOf(element)) key += `,${node}`;
    key += ";";
  }
  return key;
}

/** Gives a circuit the numbers of an element that differ from those it had before. */
export function takeValues(circuit: Pick<PreparedCircuit, "setValue">, element: Element, before: Element | undefined): void {
  if (element === before) return;
  const old = before as Readonly<Record<string, unknown>> | undefined;
  for (const [field, value] of Object.entries(element))
    if (typeof value === "number" && old?.[field] !== value) circuit.setValue(element.id, field, value);
}
