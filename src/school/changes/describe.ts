// Says what a change does, as a code with the names that a sentence needs: "Awa is away on 4 March."
//
// Names are taken from the class file as it was before the change, because whoever leaves has none after it.
// Does not know: any language. Titles of lessons, unless it is given them.
import { writeMoney } from "../../base/index.ts";
import type { ClassFile } from "../file/index.ts";
import type { Change, ChangeKind, SittingRef } from "./change.ts";
import { namesOf } from "./changePupils.ts";

/** A text of the catalogue, and what it is filled with. */
export interface Described<Kind extends ChangeKind = ChangeKind> {
  readonly code: `change.${Kind}`;
  readonly data: Readonly<Record<string, string | number | boolean | null | readonly string[]>>;
}

/**
 * @param titleOf the title of a lesson by its id, where titles are known; else lessons are called by their ids.
 * @returns code and data; what is not in the class file is called by its id. Sums are text, as files write them: "150.00".
 */
export function describe(change: Change, classFile: ClassFile, titleOf: (lesson: string) => string = (id) => id): Described {
  const groupOf = (id: string) => classFile.classes.find((group) => group.id === id);
  const className = (id: string) => groupOf(id)?.name ?? id;
  const names = (id: string, pupils: readonly string[]) => namesOf(groupOf(id), pupils);
  const money = (sum: number | null) => (sum === null ? null : writeMoney(sum, classFile.decimals));
  const meeting = (sitting: SittingRef) => ({
    class: className(sitting.class),
    lesson: titleOf(sitting.lesson),
    date: sitting.date as string,
  });
  const say = (data: Described["data"]): Described => ({ code: `change.${change.kind}`, data });
  switch (change.kind) {
    case "set-about":
    case "set-room":
      return say({});
    case "restore-day":
      return say({ date: change.date, clock: change.clock });
    case "join-copy":
      return say({ name: change.name });
    case "set-language":
      return say({ language: change.language });
    case "set-currency":
      return say({ currency: change.currency });
    case "set-chance":
      return say({ chance: change.chance });
    case "set-budget":
      return say({ sum: money(change.budget), currency: classFile.currency });
    case "add-class":
      return say({ class: change.name });
    case "rename-class":
      return say({ class: className(change.class), name: change.name });
    case "remove-class":
      return say({ class: className(change.class) });
    case "set-team-size":
      return say({ class: className(change.class), count: change.teamSize });
    case "set-balance":
      return say({ class: className(change.class), mark: change.balance });
    case "take-roster":
      return say({ class: className(change.class), count: change.pupils.length });
    case "add-pupil":
      return say({ class: className(change.class), name: change.name });
    case "rename-pupil":
      return say({ pupil: names(change.class, [change.pupil])[0] ?? change.pupil, name: change.name });
    case "remove-pupil":
      return say({ pupil: names(change.class, [change.pupil])[0] ?? change.pupil, class: className(change.class) });
    case "keep-apart":
    case "keep-together":
    case "drop-wish":
      return say({ pupils: names(change.class, change.pupils) });
    case "add-lesson":
    case "remove-lesson":
      return say(meeting(change.sitting));
    case "move-lesson":
      return say({ ...meeting(change.sitting), date: change.date, clock: change.start });
    case "order-lessons":
      return say({ class: className(change.class), lessons: change.lessons.map(titleOf) });
    case "mark-absent":
    case "mark-present":
      return say({
        ...meeting(change.sitting),
        pupils: names(change.sitting.class, change.pupils),
        count: change.pupils.length,
      });
    case "decide":
    case "undecide": {
      const { decision } = change;
      return say({
        kind: decision.kind,
        lesson: titleOf(decision.lesson),
        item: decision.kind === "skip" ? null : decision.item,
        part: decision.kind === "substitute" ? decision.part : null,
        class: decision.kind === "skip" ? className(decision.class) : null,
      });
    }
    case "tick":
    case "untick":
      return say({ sitting: namedSitting(change.sitting, className, titleOf), what: change.what });
    case "set-kit":
      return say({ kit: change.kit, count: change.count });
    case "set-stock":
    case "set-supply":
      return say({ item: change.line.item, count: change.line.count, box: change.line.box });
    case "remove-stock":
    case "remove-supply":
      return say({ item: change.item, box: change.box });
    case "take-stock":
      return say({ how: change.how, count: change.lines.length });
    case "move-stock": {
      const { item, change: by, why, date } = change.movement;
      return say({ item, count: Math.abs(by), why, date });
    }
    case "set-computer":
      return say({ id: change.computer.id, works: change.computer.works });
    case "remove-computer":
      return say({ id: change.id });
    case "set-device":
      return say({ what: change.what, id: change.device.id, works: change.device.works });
    case "remove-device":
      return say({ what: change.what, id: change.id });
    case "count-devices":
      return say({ what: change.what, count: change.count });
    case "add-power-cut":
    case "remove-power-cut":
      return say({ date: change.cut.date, fromClock: change.cut.from, toClock: change.cut.to });
    case "set-supplier":
      return say({ name: change.supplier.name, count: change.supplier.offers.length });
    case "remove-supplier":
      return say({ name: classFile.suppliers.find(({ id }) => id === change.id)?.name ?? change.id });
    case "order-came":
      return say({ count: change.movements.length, items: [...new Set(change.movements.map(({ item }) => item))].slice(0, 3) });
    case "count-in": {
      const [first] = change.counts;
      return say({ count: change.counts.length, lesson: titleOf(first?.lesson ?? ""), class: className(first?.class ?? "") });
    }
    case "log":
    case "take-back-log": {
      const { class: group, lesson, date, team, what } = change.entry;
      return say({ class: className(group), lesson: titleOf(lesson), date, team, what });
    }
  }
}

/** "<class>/<lesson>/<date>" with names in place of ids; language knows how to say it. */
function namedSitting(sitting: string, className: (id: string) => string, titleOf: (id: string) => string): string {
  const [group = "", lesson = "", date = ""] = sitting.split("/");
  return [className(group).replaceAll("/", " "), titleOf(lesson), date].join("/");
}
