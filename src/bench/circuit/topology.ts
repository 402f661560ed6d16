// What the wiring alone says: nodes without a path to ground, loops of ideal sources, current sources without a way out.
//
// These are found by joining nodes, before any arithmetic: a matrix would only say "no pivot" and not which wire is missing.
// Does not know: values (only whether a series resistance is zero), equations.
import type { CurrentSource, Element, NodeName } from "./netlist.ts";
import { joinedNodes, nodesOf } from "./terminals.ts";

export interface Topology {
  /** Ids of elements that form a loop of ideal voltage sources and inductors, in the order of the netlist, or null. */
  readonly sourceLoop: readonly string[] | null;
  /** Groups of nodes without a path for current to ground, each in the order of the netlist. */
  readonly floating: readonly (readonly NodeName[])[];
  /** Current sources that push current into or out of such a group, with the node there. */
  readonly withoutPath: readonly { readonly source: CurrentSource; readonly node: NodeName }[];
  /** Whether a steady current can flow between two nodes. */
  readonly areJoined: (a: NodeName, b: NodeName) => boolean;
}

interface View {
  /** Elements that are to be taken as current sources: supplies at their limit. */
  readonly isOpen?: (element: Element) => boolean;
  /** As seen within a step through time: a capacitor conducts, an inductor does not fix a voltage. */
  readonly inTime?: boolean;
}

export function readTopology(elements: readonly Element[], { isOpen = () => false, inTime = false }: View = {}): Topology {
  const nodes = new Set<NodeName>(["0"]);
  for (const element of elements) for (const node of nodesOf(element)) nodes.add(node);
  const groups = new Groups();
  for (const element of elements) {
    if (isOpen(element)) continue;
    const [first, ...others] = inTime && element.kind === "capacitor" ? nodesOf(element) : joinedNodes(element);
    for (const other of others) groups.join(first as NodeName, other);
  }
  const ground = groups.find("0");
  const byGroup = new Map<NodeName, NodeName[]>();
  for (const node of nodes) {
    const group = groups.find(node);
    if (group === ground) continue;
    const members = byGroup.get(group);
    if (members) members.push(node);
    else byGroup.set(group, [node]);
  }
  const withoutPath = [];
  for (const element of elements) {
    if (element.kind !== "currentSource") continue;
    const from = groups.find(element.from);
    const to = groups.find(element.to);
    if (from !== to) withoutPath.push({ source: element, node: to === ground ? element.from : element.to });
  }
  return {
    sourceLoop: findSourceLoop(inTime ? elements.filter(({ kind }) => kind !== "inductor") : elements),
    floating: [...byGroup.values()],
    withoutPath,
    areJoined: (a, b) => groups.find(a) === groups.find(b),
  };
}

/** The two nodes between which an element alone decides the voltage, whatever the current; null for all others. */
function idealEnds(element: Element): readonly [NodeName, NodeName] | null {
  if (element.kind === "voltageSource") return [element.plus, element.minus];
  if (element.kind === "inductor") return [element.a, element.b];
  if (element.kind === "limitedSource" && element.ohms === 0) return [element.plus, element.minus];
  if (element.kind === "regulator" && element.outputOhms === 0) return [element.output, element.ground];
  return null;
}

/** Grows a forest of sources; the first source whose ends are already joined closes a loop. */
function findSourceLoop(elements: readonly Element[]): string[] | null {
  const groups = new Groups();
  const forest = new Map<NodeName, { id: string; other: NodeName }[]>();
  const link = (node: NodeName, id: string, other: NodeName) => {
    const links = forest.get(node);
    if (links) links.push({ id, other });
    else forest.set(node, [{ id, other }]);
  };
  for (const element of elements) {
    const ends = idealEnds(element);
    if (ends === null) continue;
    const [a, b] = ends;
    if (groups.find(a) === groups.find(b)) {
      const loop = new Set([...pathBetween(forest, a, b), element.id]);
      return elements.filter(({ id }) => loop.has(id)).map(({ id }) => id);
    }
    groups.join(a, b);
    link(a, element.id, b);
    link(b, element.id, a);
  }
  return null;
}

/** @returns the ids along the only way from one node to another in a forest; empty when they are the same node. */
function pathBetween(
  forest: ReadonlyMap<NodeName, readonly { id: string; other: NodeName }[]>,
  from: NodeName,
  to: NodeName,
): string[] {
  const cameBy = new Map<NodeName, { id: string; node: NodeName }>();
  const queue = [from];
  for (let node = queue.shift(); node !== undefined && node !== to; node = queue.shift()) {
    for (const { id, other } of forest.get(node) ?? []) {
      if (other === from || cameBy.has(other)) continue;
      cameBy.set(other, { id, node });
      queue.push(other);
    }
  }
  const path: string[] = [];
  for (let step = cameBy.get(to); step !== undefined; step = cameBy.get(step.node)) path.unshift(step.id);
  return path;
}

/** Sets of nodes that are joined pair by pair (union–find with path halving). */
class Groups {
  readonly #parent = new Map<NodeName, NodeName>();

  find(node: NodeName): NodeName {
    let at = node;
    for (;;) {
      const parent = this.#parent.get(at) ?? at;
      if (parent === at) return at;
      const grand = this.#parent.get(parent) ?? parent;
      this.#parent.set(at, grand);
      at = grand;
    }
  }

  join(a: NodeName, b: NodeName): void {
    const rootA = this.find(a);
    const rootB = this.find(b);
    if (rootA !== rootB) this.#parent.set(rootA, rootB);
  }
}
