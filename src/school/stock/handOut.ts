// Hands units to teams: as many as there are, exact items before substitutes, better substitutes before worse.
//
// A minimum-cost flow from needs to items, where a unit costs its place in the need's list. Successive shortest paths; the
// graph has some tens of nodes, so the plain method of Bellman and Ford finds each path.
// Source: Ahuja, Magnanti, Orlin, Network Flows, 1993, section 9.7, from memory; the tests compare with all ways.
// Does not know: chances, days.
import type { ItemKey } from "../file/index.ts";

export interface HandNeed {
  /** Units to hand out; no more than the items allow where needs compete (shareOut.ts knows). */
  readonly units: number;
  /** Best first. */
  readonly accepts: readonly ItemKey[];
}

interface Edge {
  readonly from: number;
  readonly to: number;
  room: number;
  readonly cost: number;
  /** The edge back. */
  readonly back: number;
}

/** @returns for each need the items it gets, best first, with counts: the most units, and of these the fewest places lost. */
export function handOut(needs: readonly HandNeed[], counts: ReadonlyMap<ItemKey, number>): Map<ItemKey, number>[] {
  const items = [...new Set(needs.flatMap((n) => n.accepts))];
  const source = 0;
  const sink = 1;
  const edges: Edge[] = [];
  const join = (from: number, to: number, room: number, cost: number) => {
    edges.push({ from, to, room, cost, back: edges.length + 1 });
    edges.push({ from: to, to: from, room: 0, cost: -cost, back: edges.length - 1 });
    return edges.length - 2;
  };
  const needNode = (n: number) => 2 + n;
  const itemNode = (i: number) => 2 + needs.length + i;
  for (const [n, need] of needs.entries()) join(source, needNode(n), need.units, 0);
  for (const [i, item] of items.entries()) join(itemNode(i), sink, counts.get(item) ?? 0, 0);
  const choices = needs.map((need, n) =>
    need.accepts.map((item, place) => ({
      item,
      edge: join(needNode(n), itemNode(items.indexOf(item)), need.units, place),
    })),
  );

  for (let path = cheapestPath(edges, 2 + needs.length + items.length); path !== null; ) {
    const room = Math.min(...path.map((e) => edges[e]!.room));
    for (const e of path) {
      edges[e]!.room -= room;
      edges[edges[e]!.back]!.room += room;
    }
    path = cheapestPath(edges, 2 + needs.length + items.length);
  }
  return choices.map(
    (list) =>
      new Map(list.map(({ item, edge }) => [item, edges[edges[edge]!.back]!.room] as const).filter(([, count]) => count > 0)),
  );
}

/** Edges of the cheapest way from node 0 to node 1 with room left, or null. */
function cheapestPath(edges: readonly Edge[], nodes: number): number[] | null {
  const cost = new Array<number>(nodes).fill(Number.POSITIVE_INFINITY);
  const by = new Array<number>(nodes).fill(-1);
  cost[0] = 0;
  for (let changed = true; changed; ) {
    changed = false;
    edges.forEach((edge, e) => {
      const total = cost[edge.from]! + edge.cost;
      if (edge.room > 0 && total < cost[edge.to]!) {
        cost[edge.to] = total;
        by[edge.to] = e;
        changed = true;
      }
    });
  }
  if (by[1] === -1) return null;
  const path: number[] = [];
  for (let node = 1; node !== 0; node = edges[by[node]!]!.from) path.unshift(by[node]!);
  return path;
}
