// One team's table in one electrical state: the circuit of a build, solved, and remembered by what it depends on.
//
// A blinking lamp has two states, however long it blinks: each is solved once. The key is what every pin drives, what every part
// is set to and how strong the supply is.
// Does not know: time, the program, what a person would see.
import { type DcOutcome, type Element, type NodeName, nodesOf, type OperatingPoint, terminals } from "../circuit/index.ts";
import type { PartState } from "../parts/index.ts";
import { boardIds, pinElement, pinElements, pinsInUse, supplyElements } from "./boardElements.ts";
import type { Build } from "./build.ts";
import { type CircuitShelf, circuitShelf } from "./circuitShelf.ts";
import { drawElements } from "./draws.ts";
import { ground } from "./wireUp.ts";

/** What a table depends on besides its build. */
export interface TableState {
  /** One letter for each pin in use, see `Drive`. */
  readonly drives: string;
  /** States by part, as stimuli and the parts themselves set them. */
  readonly states: ReadonlyMap<string, PartState>;
  /** What a part with a current of its own is doing: SERVO1 → "start". */
  readonly doing: ReadonlyMap<string, string>;
  readonly supplyOn: boolean;
  /** Whether the supply keeps to its rated current, see `supplyElements`. */
  readonly limited: boolean;
}

/** The voltages and currents of one state. Everything is 0 for what is not in the circuit or has no power. */
export interface Point {
  readonly key: string;
  readonly on: boolean;
  /** V of the board's 5 V net, which is the chip's supply. */
  readonly rail: number;
  /** A that the supply gives. */
  readonly supplyAmps: number;
  /** A through the board's fuse; 0 where the supply does not pass it. */
  readonly fuseAmps: number;
  volts(node: NodeName): number;
  amps(id: string): number;
  watts(id: string): number;
  /** V across an element: from its first to its second terminal. */
  across(id: string): number;
  /** rad/s of a motor that is followed in time; null for anything else. */
  speed(id: string): number | null;
  /** A that flow out of a pin; negative into it. */
  pinAmps(pin: string): number;
  /** A that flow into a part at one leg; at the board and at what feeds it, out of it. */
  legAmps(part: string, leg: string): number;
  readonly floating: ReadonlySet<NodeName>;
  /** Whether anything holds a node, so that it has a voltage that a person could measure. */
  holds(node: NodeName): boolean;
  readonly elements: ReadonlyMap<string, Element>;
  /** Why there is no answer; null where there is one. */
  readonly failure: Exclude<DcOutcome["status"], "solved"> | null;
}

export interface Table {
  readonly build: Build;
  /** Names of the pins in use, in the order of `drives`. */
  readonly pins: readonly string[];
  point(state: TableState): Point;
  /** V of a node when that much current leaks into it besides; null where nothing holds the node. */
  voltsWithLeak(state: TableState, node: NodeName, amps: number): number | null;
  /** All points that were asked for. */
  points(): Iterable<Point>;
}

/** @param shelf kept by whoever sets several tables of one lesson: they share the circuits that are ready to be solved. */
export function setTable(build: Build, shelf: CircuitShelf = circuitShelf()): Table {
  const pins = pinsInUse(build.wiring);
  const points = new Map<string, Point>();
  const leaks = new Map<string, number | null>();

  const elementsOf = (state: TableState): Element[] => [
    ...supplyElements(build, state.limited),
    ...pinElements(build, pins, state.drives),
    ...[...build.parts.values()].flatMap((part) => [
      ...part.kind.model(part.name, (leg) => build.wiring.node(part.name, leg), part.values, stateOf(state, part.name)),
      ...drawElements(build, part, state.doing.get(part.name)),
    ]),
  ];
  const stateOf = (state: TableState, part: string) => state.states.get(part) ?? firstState(build, part);

  return {
    build,
    pins,
    points: () => points.values(),
    point(state) {
      const key = keyOf(state);
      const known = points.get(key);
      if (known) return known;
      const elements = state.supplyOn ? elementsOf(state) : [];
      const outcome = state.supplyOn ? shelf.solve(elements) : null;
      const point = makePoint(build, key, elements, outcome, pins, state.drives);
      points.set(key, point);
      return point;
    },
    voltsWithLeak(state, node, amps) {
      if (node === ground) return 0;
      const key = `${keyOf(state)}|${node}|${amps}`;
      const known = leaks.get(key);
      if (known !== undefined) return known;
      const elements = elementsOf(state);
      const held = elements.some((e) => nodesOf(e).includes(node));
      const leak: Element = { kind: "currentSource", id: "board.leak", from: ground, to: node, amps };
      const outcome = held ? shelf.solve([...elements, leak]) : null;
      const volts = outcome?.status === "solved" && !outcome.floating.includes(node) ? outcome.point.volts(node) : null;
      leaks.set(key, volts);
      return volts;
    },
  };
}

/** The states of a part before any stimulus. */
export function firstState(build: Build, part: string): PartState {
  const states = build.parts.get(part)?.kind.states ?? {};
  return Object.fromEntries(Object.entries(states).map(([name, spec]) => [name, spec.atFirst]));
}

/** As the table is before the program's first line: every pin listens. */
export function stateAtReset(table: Table): TableState {
  const drives = table.pins.map(() => "i").join("");
  return { drives, states: new Map(), doing: new Map(), supplyOn: true, limited: false };
}

/** What tells a state from others. */
export function keyOf(state: TableState): string {
  let key = `${state.drives}${state.supplyOn ? "+" : "-"}${state.limited ? "!" : ""}`;
  for (const [part, values] of state.states) {
    key += `|${part}`;
    for (const name in values) key += `,${name}=${values[name]}`;
  }
  for (const [part, doing] of state.doing) key += `|${part} ${doing}`;
  return key;
}

function makePoint(
  build: Build,
  key: string,
  list: readonly Element[],
  outcome: DcOutcome | null,
  pins: readonly string[],
  drives: string,
): Point {
  const solved = outcome?.status === "solved" ? outcome : null;
  const failure = outcome && outcome.status !== "solved" ? outcome.status : null;
  const amps = (id: string, point: OperatingPoint, elements: ReadonlyMap<string, Element>) =>
    elements.has(id) ? point.amps(id) : 0;
  const maker = pointMaker(build, solved ? list : [], solved?.floating ?? [], (point, elements, pin) => {
    return amps(pinElement(pin), point, elements) * (drives[pins.indexOf(pin)] === "0" ? -1 : 1);
  });
  return maker(key, solved?.point ?? null, failure);
}

/** How the points of one circuit are read; what they share is made once. @param pinAmps A out of a pin. */
export function pointMaker(
  build: Build,
  list: readonly Element[],
  floatingNodes: readonly NodeName[],
  pinAmps: (point: OperatingPoint, elements: ReadonlyMap<string, Element>, pin: string) => number,
): (key: string, solved: OperatingPoint | null, failure?: Point["failure"], on?: boolean) => Point {
  const elements = new Map(list.map((e) => [e.id, e]));
  const nodes = new Set([...elements.values()].flatMap(nodesOf));
  const floating = new Set(floatingNodes);
  const railNode = build.wiring.node("board", "5V");
  return (key, solved, failure = null, on = solved !== null) => {
    const volts = (node: NodeName) => (solved && nodes.has(node) ? solved.volts(node) : 0);
    const amps = (id: string) => (solved && elements.has(id) ? solved.amps(id) : 0);
    return {
      key,
      on,
      rail: volts(railNode),
      supplyAmps: -amps(boardIds.supply),
      fuseAmps: amps(boardIds.fuse),
      volts,
      amps,
      watts: (id) => (solved && elements.has(id) ? solved.watts(id) : 0),
      across(id) {
        const element = elements.get(id);
        if (!element) return 0;
        const [first, second] = endsOf(element);
        return volts(first) - volts(second);
      },
      speed: (id) => (solved && elements.get(id)?.kind === "motor" ? solved.state(id) : null),
      pinAmps: (pin) => (solved ? pinAmps(solved, elements, pin) : 0),
      legAmps(part, leg) {
        const node = build.wiring.node(part, leg);
        const gives = part === "board" || part === build.supply.name;
        let sum = 0;
        for (const element of solved ? elements.values() : []) {
          if (!belongs(element.id, part, build.supply.name)) continue;
          for (const terminal of terminals[element.kind])
            if ((element as unknown as Record<string, NodeName>)[terminal] === node)
              sum += solved?.terminalAmps(element.id, terminal) ?? 0;
        }
        return gives ? -sum : sum;
      },
      floating,
      holds: (node) => node === ground || (solved !== null && nodes.has(node) && !floating.has(node)),
      elements,
      failure,
    };
  };
}

/** Whether an element is inside a part. What feeds the board is no part of it, whatever its element is called. */
function belongs(id: string, part: string, supply: string): boolean {
  if (id === boardIds.supply) return part === supply;
  return id === part || id.startsWith(`${part}.`);
}

/** The two nodes between which an element's voltage counts: of a transistor those of its main current. */
function endsOf(element: Element): readonly [NodeName, NodeName] {
  if (element.kind === "npn" || element.kind === "pnp") return [element.collector, element.emitter];
  if (element.kind === "nmos" || element.kind === "pmos") return [element.drain, element.source];
  if (element.kind === "regulator") return [element.output, element.ground];
  const [first = "0", second = "0"] = nodesOf(element);
  return [first, second];
}
