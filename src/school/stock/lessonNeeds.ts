// What one team needs for a lesson: the parts of its circuit, and what any circuit needs.
//
// Wires are counted from the nets, before any layout is known, and from above: each leg is taken to sit in a row of its own.
// A supply net (5V, 3V3, GND, VIN) then runs along a rail, which takes one wire for each leg and one for each pin of the board;
// any other net takes one for each pin and one between neighbouring rows. Parts that share a row save wires, so a layout
// never needs more; running out of wires in class would be worse than a few that stay in the box.
// Does not know: how many teams there are, the cupboard, which substitutes pass (they come as data).
import type { Lesson, LessonPart, Net } from "../../bench/lesson/index.ts";
import { catalogue } from "../../bench/parts/index.ts";
import type { ItemKey } from "../file/index.ts";
import type { Need } from "./demand.ts";

export interface LessonNeedsOptions {
  /** For each part of the circuit: the items that a rehearsal proved in its place, best first. */
  readonly substitutes?: ReadonlyMap<string, readonly ItemKey[]>;
  /** Teams that share one computer; 1 unless said. */
  readonly teamsPerComputer?: number;
  /** What feeds the board where the circuit names no supply for it: a laptop's port unless said. Null: no need of its own. */
  readonly supply?: ItemKey | null;
  /** Supplies that a rehearsal proved in its place. */
  readonly supplySubstitutes?: readonly ItemKey[];
}

/** The supply of a lesson that names none. */
export const usualSupply: ItemKey = "usb-port 500mA";

/** Pins of the board that belong on a rail. */
const railPins = new Set(["5V", "3V3", "GND", "VIN"]);
/** Pins through which the board itself is fed. */
const feedPins = new Set(["5V", "VIN", "USB"]);

/**
 * The needs of one team, circuit first in the order of the lesson, then board, cable, breadboard, wires, computer, supply.
 *
 * Parts of one item are one need (`for` lists them); parts whose proven substitutes differ stay apart.
 */
export function lessonNeeds(lesson: Lesson, options: LessonNeedsOptions = {}): Need[] {
  const board = [...lesson.parts.values()].find((p) => p.kind === "board")?.name ?? "board";
  const parts = [...lesson.parts.values()].filter((p) => p.name !== board);

  const grouped = new Map<string, { item: ItemKey; names: string[]; substitutes: readonly ItemKey[] }>();
  for (const part of parts) {
    const substitutes = options.substitutes?.get(part.name) ?? [];
    const key = [part.item, ...substitutes].join("\n");
    const group = grouped.get(key) ?? { item: part.item, names: [], substitutes };
    group.names.push(part.name);
    grouped.set(key, group);
  }

  const needs: Need[] = [...grouped.values()].map(({ item, names, substitutes }) => ({
    for: names,
    item,
    each: names.length,
    substitutes,
  }));
  const one = (use: string, item: ItemKey = use, more: Partial<Need> = {}) =>
    needs.push({ for: [use], item, each: 1, substitutes: [], ...more });

  one("board", "board", { pins: boardPins(lesson, board) });
  one("usb-cable");
  one("breadboard", "breadboard", { substitutes: ["breadboard full"] });
  const wires = lesson.nets.reduce((sum, net) => sum + wiresOfNet(net, board), 0);
  if (wires > 0) one("wire", "wire", { each: wires });
  one("computer", "computer", { each: 1 / (options.teamsPerComputer ?? 1) });
  const supply = options.supply === undefined ? usualSupply : options.supply;
  if (supply !== null && !feedsBoard(lesson, parts, board))
    one("supply", supply, { substitutes: options.supplySubstitutes ?? [] });
  return needs;
}

/** Wires for one net; see the head of this file. Legs that are the same pin of the board count once. */
export function wiresOfNet(net: Net, board: string): number {
  const pins = net.legs.filter((leg) => leg.part === board);
  const rows = net.legs.length - pins.length;
  // Pins joined to pins only: a wire from each to the next.
  if (rows === 0) return Math.max(0, pins.length - 1);
  return pins.some((leg) => railPins.has(leg.leg)) ? pins.length + rows : pins.length + rows - 1;
}

function boardPins(lesson: Lesson, board: string): string[] {
  const pins = lesson.nets.flatMap((net) => net.legs.filter((leg) => leg.part === board).map((leg) => leg.leg));
  return [...new Set(pins)].sort();
}

/** Whether a supply among the parts stands on a net that feeds the board. */
function feedsBoard(lesson: Lesson, parts: readonly LessonPart[], board: string): boolean {
  const supplies = new Set(parts.filter((p) => catalogue.get(p.kind)?.supply !== undefined).map((p) => p.name));
  return lesson.nets.some(
    (net) =>
      net.legs.some((leg) => leg.part === board && feedPins.has(leg.leg)) && net.legs.some((leg) => supplies.has(leg.part)),
  );
}
