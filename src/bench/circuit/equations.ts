// The equations of a circuit: unknowns, places of the matrix, and the arrays that every device family writes into.
//
// Unknowns are node voltages (those of the netlist and the inner nodes of parts with ohms inside) and the currents of parts
// that need one; unknown 0 is ground, always 0 V, and matrix place 0 is a bin, so that nobody has to ask "is this ground?".
// Modified nodal analysis: the row of a node says that the currents leaving it add up to zero, the row of a current is its
// part's own equation. Source: Ho, Ruehli, Brennan, IEEE Trans. CAS 22 (1975).
// Does not know: any device, how the equations are solved.
import type { SparsePattern } from "./eliminationList.ts";
import type { NodeName } from "./netlist.ts";

/** Number of an unknown: 0 is ground. */
export type Unknown = number;
/** Number of a place in the matrix: 0 is the bin. */
export type MatrixPlace = number;

/** How a pass begins: from the last guess of every junction, from nothing, or from given node voltages. */
export type Start = "last" | "nothing" | "volts";

export interface Equations {
  /** By unknown: V or A. x[0] stays 0. */
  readonly x: Float64Array;
  /** By unknown: what does not add up, A in rows of nodes, V in rows of sources. */
  readonly residual: Float64Array;
  /** By place: what no device changes between passes. */
  readonly fixed: Float64Array;
  /** By place: the whole matrix of this pass. */
  jacobian: Float64Array;
  /** Junction voltages and switch positions of the last pass; kept together so that a good point can be put back. */
  readonly state: Float64Array;
  /** By terminal: A into it; elements with two terminals keep the first only. */
  readonly currents: Float64Array;
  /** All independent sources are multiplied by this. */
  sourceScale: number;
  start: Start;
  /** Whether supplies begin blocked instead of giving, when they do not begin from the last pass. */
  suppliesBlocked: boolean;
  /** Devices that were limited or changed their region in this pass: above 0 the pass cannot be the last. */
  unsettled: number;
  /** How many piecewise devices may still change their region in this pass. */
  switchesLeft: number;
  /** s. The step through time that this solve is the end of; 0 at an operating point. */
  stepSeconds: number;
  /** 2 for the trapezoidal rule, which also takes the slope at the beginning of the step; 1 for backward Euler. */
  slopes: 1 | 2;
}

/** One kind of device: it writes its part of the equations. */
export interface DeviceFamily {
  /** Reads the values of its element number k again. */
  take(k: number): void;
  /** Adds what no pass changes to `fixed`. */
  stampFixed(eq: Equations): void;
  /** Adds to residual and jacobian at x, writes currents, counts what is not settled. */
  load(eq: Equations): void;
}

/** A family that remembers: what it keeps changes only when a step through time is accepted. */
export interface StoringFamily extends DeviceFamily {
  readonly count: number;
  /** Writes what each element keeps at the guess, V or A, and how fast it changes there, per second, from place `at` on. */
  read(eq: Equations, values: Float64Array, rates: Float64Array, at: number): void;
  /** Takes the present guess as what was. */
  keep(eq: Equations): void;
  /** Makes the current (and the speed) of element k the present guess, where it is an unknown of its own. */
  put?(eq: Equations, k: number, amps: number, speed?: number): void;
}

/** A family that stands one way or another, or changes slowly, by what went through it. */
export interface TurningFamily extends DeviceFamily {
  /** s. It must be asked again after so long at the latest. */
  longestStep(eq: Equations): number;
  /** The next instant after `seconds` at which something turns by itself; infinite when nothing does. */
  nextTurn(seconds: number): number;
  /** Whether something would turn over by the end of a step of so many seconds to the present guess. */
  wantsTurn(eq: Equations, stepSeconds: number): boolean;
  /** Takes an accepted step that ended at `seconds`. @returns whether something turned over, so that all must be solved anew. */
  pass(eq: Equations, stepSeconds: number, seconds: number): boolean;
}

/** Hands out unknowns, places, state and terminal currents while the families are set up. */
export class EquationBuilder {
  readonly #nodes = new Map<NodeName, Unknown>([["0", 0]]);
  readonly #owners: (NodeName | null)[] = ["0"];
  readonly #innerNames = new Map<string, Unknown>();
  readonly #places = new Map<number, MatrixPlace>();
  readonly #rows: number[] = [0];
  readonly #columns: number[] = [0];
  readonly #firm = new Set<MatrixPlace>();
  #states = 0;
  #currents = 0;

  /** The unknown of a node of the netlist. */
  node(name: NodeName): Unknown {
    const known = this.#nodes.get(name);
    if (known !== undefined) return known;
    const unknown = this.#owners.push(name) - 1;
    this.#nodes.set(name, unknown);
    return unknown;
  }

  /** A node inside a part: behind `ohms` it is new, without any it is the outer node. */
  innerNode(outer: NodeName, id: string, ohms: number | undefined): Unknown {
    if (!ohms) return this.node(outer);
    const unknown = this.#owners.push(outer) - 1;
    this.#innerNames.set(id, unknown);
    return unknown;
  }

  /** The node inside a part that `innerNode` made under this name, or the outer one. */
  innerOf(outer: NodeName, id: string): Unknown {
    return this.#innerNames.get(id) ?? this.node(outer);
  }

  /** The unknown current of a part. */
  branch(): Unknown {
    return this.#owners.push(null) - 1;
  }

  /** The place of a row and column. @param firm its value is ±1 for good. */
  place(row: Unknown, column: Unknown, firm = false): MatrixPlace {
    if (row === 0 || column === 0) return 0;
    const key = row * 0x10000 + column;
    let place = this.#places.get(key);
    if (place === undefined) {
      place = this.#rows.push(row) - 1;
      this.#columns.push(column);
      this.#places.set(key, place);
    }
    if (firm) this.#firm.add(place);
    return place;
  }

  /** @returns the first of `count` numbers of state. */
  state(count: number): number {
    this.#states += count;
    return this.#states - count;
  }

  /** @returns the first of `count` terminal currents. */
  currents(count: number): number {
    this.#currents += count;
    return this.#currents - count;
  }

  /** Closes the list of unknowns. Every node gets a place on the diagonal, for continuation by leaks to ground. */
  finish() {
    const size = this.#owners.length - 1;
    const nodeRows: Unknown[] = [];
    for (let unknown = 1; unknown <= size; unknown += 1) if (this.#owners[unknown] !== null) nodeRows.push(unknown);
    const diagonals = nodeRows.map((unknown) => this.place(unknown, unknown));
    const pattern: SparsePattern = { size, rows: this.#rows, columns: this.#columns, firm: this.#firm };
    const equations: Equations = {
      x: new Float64Array(size + 1),
      residual: new Float64Array(size + 1),
      fixed: new Float64Array(this.#rows.length),
      jacobian: new Float64Array(this.#rows.length),
      state: new Float64Array(this.#states),
      currents: new Float64Array(this.#currents),
      sourceScale: 1,
      start: "nothing",
      suppliesBlocked: false,
      unsettled: 0,
      switchesLeft: 0,
      stepSeconds: 0,
      slopes: 1,
    };
    return {
      equations,
      pattern,
      nodeRows: Int32Array.from(nodeRows),
      nodeDiagonals: Int32Array.from(diagonals),
      nodes: this.#nodes as ReadonlyMap<NodeName, Unknown>,
      innerNodes: this.#innerNames as ReadonlyMap<string, Unknown>,
      /** By unknown: the node it is or is inside of; null for currents. */
      owners: this.#owners as readonly (NodeName | null)[],
    };
  }
}

export type FinishedEquations = ReturnType<EquationBuilder["finish"]>;
