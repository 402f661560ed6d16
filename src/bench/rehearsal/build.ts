// One way to build a lesson: its parts with the values they really have, how they are wired, and what feeds the board.
//
// The lesson as written is one build; a kit's other resistor, a corner of the tolerances, another supply are others. Everything
// later (table, run, hazards) sees only a build.
// Does not know: the program, time, states.

import type { NodeName } from "../circuit/index.ts";
import type { Lesson } from "../lesson/index.ts";
import { boardFacts, catalogue, type PartKind, type PartValues, parseItemKey, type SupplyFacts } from "../parts/index.ts";
import type { ItemKey, RehearsalProblem } from "./result.ts";
import { type Wiring, wireUp } from "./wireUp.ts";

export interface BuiltPart {
  readonly name: string;
  readonly kind: PartKind;
  readonly values: PartValues;
}

/** What feeds the board, and where. */
export interface BoardSupply {
  readonly item: ItemKey;
  /** Part of the lesson, or "supply" where the lesson names none. */
  readonly name: string;
  readonly facts: SupplyFacts;
  readonly plus: NodeName;
  readonly minus: NodeName;
}

/** Figures of board and supply that differ from one table to the next. */
export interface Circumstances {
  readonly outputOhms: number;
  readonly pullUpOhms: number;
  readonly fuseOhms: number;
  readonly cableOhms: number;
  /** V of the board's supply without load, and Ω behind which it stands. */
  readonly supplyVolts: number;
  readonly supplyOhms: number;
}

export interface Build {
  readonly lesson: Lesson;
  /** Without the board. */
  readonly parts: ReadonlyMap<string, BuiltPart>;
  readonly wiring: Wiring;
  readonly supply: BoardSupply;
  readonly circumstances: Circumstances;
}

/** What is to differ from the lesson as written. */
export interface BuildChoice {
  /** Part to the item that is put in its place. */
  readonly items?: ReadonlyMap<string, ItemKey>;
  /** Item that feeds the board in place of the lesson's. */
  readonly supply?: ItemKey;
  /** Part to single values that differ from the item's, for corners and margins: SI. */
  readonly values?: ReadonlyMap<string, PartValues>;
  readonly circumstances?: Partial<Circumstances>;
}

/** Where a lesson names no supply (design of the format): a laptop's USB port of 500 mA. */
export const usualSupply: ItemKey = "usb-port 500mA";

/** @returns the build, or null with the reason why it cannot be made. */
export function makeBuild(
  lesson: Lesson,
  choice: BuildChoice = {},
): { build: Build | null; problems: readonly RehearsalProblem[] } {
  const problems: RehearsalProblem[] = [];
  const parts = new Map<string, BuiltPart>();
  for (const [name, part] of lesson.parts) {
    if (part.kind === "board") continue;
    const item = choice.items?.get(name);
    const given = item === undefined ? { kind: part.kind, values: part.values } : parseItemKey(item);
    const kind = given ? catalogue.get(given.kind) : undefined;
    if (!given || !kind || !legsFit(lesson, name, kind)) {
      problems.push({ code: "rehearsal.itemDoesNotFit", part: name, item: item ?? part.item });
      continue;
    }
    // Another item of the same kind keeps what the key does not tell (a resistor's watts).
    const values = given.kind === part.kind ? { ...part.values, ...toldByKey(kind, given.values) } : given.values;
    parts.set(name, { name, kind, values: { ...values, ...choice.values?.get(name) } });
  }

  const kinds = new Map([...parts].map(([name, part]) => [name, part.kind]));
  const board = catalogue.get("board");
  if (board) kinds.set("board", board);
  const wiring = wireUp(kinds, lesson.nets);
  const supply = boardSupply(parts, wiring, choice.supply, lesson);
  if (!supply) problems.push({ code: "rehearsal.noSupply", supply: choice.supply ?? usualSupply });
  if (!supply || problems.length > 0) return { build: null, problems };
  return {
    build: {
      lesson,
      parts,
      wiring,
      supply,
      circumstances: {
        outputOhms: boardFacts.pin.outputOhms.value,
        pullUpOhms: boardFacts.pin.pullUpOhms.value,
        fuseOhms: boardFacts.fuse.ohms.value,
        cableOhms: catalogue.get("usb-cable")?.figures.ohms?.value ?? 0,
        supplyVolts: supply.facts.volts.value[1],
        supplyOhms: supply.facts.ohms.value,
        ...choice.circumstances,
      },
    },
    problems,
  };
}

/** Parts whose behaviour in time nobody has modelled: a rehearsal with them says nothing about them. */
export function partsNotModelled(build: Build): readonly BuiltPart[] {
  return [...build.parts.values()].filter((p) => p.kind.notModelled);
}

function legsFit(lesson: Lesson, name: string, kind: PartKind): boolean {
  return lesson.nets.every((net) => net.legs.every((leg) => leg.part !== name || kind.legs.includes(leg.leg)));
}

function toldByKey(kind: PartKind, values: PartValues): PartValues {
  return Object.fromEntries(Object.entries(values).filter(([name]) => kind.parameters[name]?.tellsApart !== undefined));
}

/** The supply part that the lesson joins to the board, or one plugged in where such a supply belongs. */
function boardSupply(
  parts: Map<string, BuiltPart>,
  wiring: Wiring,
  item: ItemKey | undefined,
  lesson: Lesson,
): BoardSupply | null {
  const sockets = ["USB", "VIN", "5V"] as const;
  const own = [...parts.values()].find(
    (p) => p.kind.supply && sockets.some((s) => wiring.node(p.name, "plus") === wiring.node("board", s)),
  );
  if (own && item === undefined) {
    const into = sockets.find((s) => wiring.node(own.name, "plus") === wiring.node("board", s)) ?? "USB";
    parts.delete(own.name);
    const facts = own.kind.supply?.(own.values);
    const usual = lesson.parts.get(own.name)?.item ?? own.kind.id;
    const legs = { plus: wiring.node(own.name, "plus"), minus: wiring.node(own.name, "minus") };
    return facts ? { item: usual, name: own.name, facts: { ...facts, into }, ...legs } : null;
  }
  if (own) parts.delete(own.name);
  const key = item ?? usualSupply;
  const parsed = parseItemKey(key);
  const kind = parsed ? catalogue.get(parsed.kind) : undefined;
  const facts = parsed && kind?.supply?.(parsed.values);
  if (!facts) return null;
  // Plugged in, it is joined to the board's own socket, whatever the lesson's supply was wired to.
  return { item: key, name: "supply", facts, plus: wiring.node("board", facts.into), minus: "0" };
}
