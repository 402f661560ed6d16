// A lesson's rehearsal in full, as its own page tells it: with corners and margins, and with what a school has or may have.
//
// With a class file the parts and supplies of that school are tried. Without one the verdict is that of the lesson's own supply,
// and what else a school may feed a board from is told beside it.
// Does not know: days of lessons, how many there are of anything.
import type { Day, LongWork } from "../../base/index.ts";
import type { Lesson } from "../../bench/lesson/index.ts";
import { type RehearsalResult, rehearse, rehearseOnce } from "../../bench/rehearsal/index.ts";
import type { ClassFile, ItemKey, Kit } from "../file/index.ts";
import { cupboard } from "../stock/index.ts";
import { suppliesToTry } from "./planClass.ts";

export interface RehearsingSchool {
  readonly classFile: ClassFile;
  readonly kits: ReadonlyMap<string, Kit>;
  readonly today: Day;
}

/** @param school whose parts and supplies are tried; null for the lesson on its own. */
export function* rehearseForSchool(lesson: Lesson, school: RehearsingSchool | null, seed: number): LongWork<RehearsalResult> {
  const whole = { corners: true, margins: true, seed };
  if (school === null) return withOtherSupplies(lesson, yield* rehearse(lesson, { items: [], ...whole }), seed);
  const items = [...cupboard(school.classFile, school.kits, school.today).items.keys()].sort();
  return yield* rehearse(lesson, { items, supplies: suppliesToTry(school.classFile, items), ...whole });
}

/** What else a school may feed a board from; tried where no class says what it has. */
const otherSupplies: readonly ItemKey[] = [
  "usb-port 900mA",
  "power-bank",
  "adapter 1000mA",
  "adapter 2000mA",
  "battery-9v",
  "battery-4aa alkaline",
  "battery-4aa nimh",
];

/** The verdict stays that of the lesson's own supply; the others are told beside it. A lesson that names its own keeps to it. */
function withOtherSupplies(lesson: Lesson, result: RehearsalResult, seed: number): RehearsalResult {
  if (!result.supplies.some((s) => s.supply.startsWith("usb-port"))) return result;
  const known = new Set(result.supplies.map((s) => s.supply));
  const others = otherSupplies
    .filter((s) => !known.has(s))
    .flatMap((supply) => rehearseOnce(lesson, { supply, seed }).supply ?? []);
  return { ...result, supplies: [...result.supplies, ...others] };
}
