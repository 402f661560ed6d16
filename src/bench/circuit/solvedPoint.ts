// The voltages and currents of one solve, by name.
//
// Either a copy, which later solves cannot change, or a window on the solver's own arrays, which costs nothing and shows
// whatever was solved last.
// Does not know: how they were found.
import type { Unknown } from "./equations.ts";
import type { Element, NodeName } from "./netlist.ts";
import type { OperatingPoint } from "./outcome.ts";
import { nodesOf, terminals } from "./terminals.ts";

/** Where the numbers of a circuit stand; the same for all its points. */
export interface PointLayout {
  readonly nodes: ReadonlyMap<NodeName, Unknown>;
  readonly innerNodes: ReadonlyMap<string, Unknown>;
  readonly elements: ReadonlyMap<string, { readonly element: Element; readonly firstCurrent: number }>;
}

const keeping: ReadonlySet<Element["kind"]> = new Set(["switch", "fuse", "battery", "motor"]);

/** How many numbers an element keeps: its currents (the last of two terminals takes what the first gives), then its state. */
export function currentCount(element: Element): number {
  const count = terminals[element.kind].length;
  return count === 2 ? (keeping.has(element.kind) ? 2 : 1) : count;
}

export class SolvedPoint implements OperatingPoint {
  readonly layout: PointLayout;
  readonly #x: Float64Array;
  readonly #currents: Float64Array;

  /** @param x V by unknown. @param currents A by terminal. */
  constructor(layout: PointLayout, x: Float64Array, currents: Float64Array) {
    this.layout = layout;
    this.#x = x;
    this.#currents = currents;
  }

  volts(node: NodeName): number {
    const unknown = this.layout.nodes.get(node);
    if (unknown === undefined) throw new RangeError(`no node ${node}`);
    return this.#x[unknown] as number;
  }

  /** The voltage of a node inside a part, or undefined: a start for the same part in another circuit. */
  innerVolts(name: string): number | undefined {
    const unknown = this.layout.innerNodes.get(name);
    return unknown === undefined ? undefined : this.#x[unknown];
  }

  /** V and A by unknown, not to be changed. */
  get unknowns(): Float64Array {
    return this.#x;
  }

  amps(id: string): number {
    return this.#currents[this.#find(id).firstCurrent] ?? 0;
  }

  terminalAmps(id: string, terminal: string): number {
    const { element, firstCurrent } = this.#find(id);
    const names: readonly string[] = terminals[element.kind];
    const index = names.indexOf(terminal);
    if (index < 0) throw new RangeError(`no terminal ${terminal} at ${id}`);
    return this.#terminal(firstCurrent, names.length, index);
  }

  state(id: string): number {
    const { element, firstCurrent } = this.#find(id);
    if (!keeping.has(element.kind)) throw new RangeError(`no state of ${id}`);
    return this.#currents[firstCurrent + 1] as number;
  }

  watts(id: string): number {
    const { element, firstCurrent } = this.#find(id);
    const nodes = nodesOf(element);
    let sum = 0;
    nodes.forEach((node, index) => {
      sum += this.volts(node) * this.#terminal(firstCurrent, nodes.length, index);
    });
    return sum;
  }

  #terminal(firstCurrent: number, count: number, index: number): number {
    if (count === 2) return (this.#currents[firstCurrent] as number) * (index === 0 ? 1 : -1);
    return this.#currents[firstCurrent + index] as number;
  }

  #find(id: string) {
    const found = this.layout.elements.get(id);
    if (found === undefined) throw new RangeError(`no element ${id}`);
    return found;
  }
}
