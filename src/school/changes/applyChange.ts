// Does one change to a class file, or says why it does not fit.
//
// First the change is checked by itself (changeShape.ts), then against the file, last the whole is looked at once more: a change
// that is taken always leaves a class file that can be written and read again. Lists that a change does not touch stay the same
// objects. Nothing here remembers what was before (history.ts).
// Does not know: screens, words, storage.
import { readJson } from "../../base/index.ts";
import { type ClassFile, findOverdrawn, writeClassFile } from "../file/index.ts";
import type { Change, ChangeKind } from "./change.ts";
import * as cupboard from "./changeCupboard.ts";
import * as lessons from "./changeLessons.ts";
import * as pupils from "./changePupils.ts";
import { listLimits, readChange } from "./changeShape.ts";
import * as whole from "./changeWhole.ts";
import { type ChangeContext, done, isSame, type Outcome, type Refused, refuse } from "./outcome.ts";

type Handler<Kind extends ChangeKind> = (
  classFile: ClassFile,
  change: Extract<Change, { readonly kind: Kind }>,
  context: ChangeContext,
) => Outcome;

const handlers: { readonly [Kind in ChangeKind]: Handler<Kind> } = {
  "set-about": (classFile, { about }) => done({ ...classFile, about }),
  "set-language": (classFile, { language }) => done({ ...classFile, language }),
  "set-currency": whole.setCurrency,
  "set-chance": (classFile, { chance }) => done({ ...classFile, chance }),
  "set-budget": whole.setBudget,
  "restore-day": whole.takeWhole,
  "join-copy": whole.takeWhole,
  "set-room": (classFile, { room }) => done({ ...classFile, room }),
  "add-class": pupils.addClass,
  "rename-class": pupils.renameClass,
  "remove-class": pupils.removeClass,
  "set-team-size": pupils.setTeamSize,
  "set-balance": pupils.setBalance,
  "take-roster": pupils.takeRoster,
  "add-pupil": pupils.addPupil,
  "rename-pupil": pupils.renamePupil,
  "remove-pupil": pupils.removePupil,
  "keep-apart": pupils.keepApart,
  "keep-together": pupils.keepTogether,
  "drop-wish": pupils.dropWish,
  "add-lesson": lessons.addLesson,
  "move-lesson": lessons.moveLesson,
  "remove-lesson": lessons.removeLesson,
  "order-lessons": lessons.orderLessons,
  "mark-absent": lessons.markAbsent,
  "mark-present": lessons.markPresent,
  decide: lessons.decide,
  undecide: lessons.undecide,
  tick: lessons.tick,
  untick: lessons.untick,
  "set-kit": cupboard.setKit,
  "set-stock": cupboard.setStock,
  "remove-stock": cupboard.removeStock,
  "take-stock": cupboard.takeStock,
  "move-stock": cupboard.moveStock,
  "set-computer": cupboard.setComputer,
  "remove-computer": cupboard.removeComputer,
  "set-device": cupboard.setDevice,
  "remove-device": cupboard.removeDevice,
  "count-devices": cupboard.countDevices,
  "set-supply": cupboard.setSupply,
  "remove-supply": cupboard.removeSupply,
  "add-power-cut": cupboard.addPowerCut,
  "remove-power-cut": cupboard.removePowerCut,
  "set-supplier": whole.setSupplier,
  "remove-supplier": whole.removeSupplier,
  "order-came": cupboard.orderCame,
  "count-in": whole.countIn,
  log: whole.log,
  "take-back-log": whole.takeBackLog,
};

/**
 * Never throws, whatever the change holds.
 *
 * @param context shipped lessons and kits, where they are known: then lessons that overlap and more taken than the kits hold are
 * found too; and ids that must not be given again.
 * @returns the class file after the change and what the change brought with it; the very same class file where nothing is new;
 * or the problem, and then nothing was done.
 */
export function applyChange(classFile: ClassFile, change: Change, context: ChangeContext = {}): Outcome {
  const read = readChange(change);
  if ("problem" in read) return read;
  const handler = handlers[read.value.kind] as Handler<ChangeKind>;
  const outcome = handler(classFile, read.value, context);
  if ("problem" in outcome) return outcome;
  const value = keepingSame(classFile, outcome.value);
  return findMisfit(classFile, value, context) ?? { ...outcome, value };
}

/** Lists and entries that say the same as before are those of before. */
function keepingSame(before: ClassFile, after: ClassFile): ClassFile {
  if (before === after || isSame(before, after)) return before;
  const fields = Object.entries(after) as [keyof ClassFile, unknown][];
  return Object.fromEntries(
    fields.map(([field, value]) => [field, isSame(before[field], value) ? before[field] : value]),
  ) as unknown as ClassFile;
}

/** What no single change can see: too long lists, too much taken from the cupboard, too large a file. */
function findMisfit(before: ClassFile, after: ClassFile, { kits }: ChangeContext): Refused | null {
  if (before === after) return null;
  const tooMany = (list: readonly unknown[], most: number) =>
    list.length > most ? refuse({ code: "changes.tooMany", most }) : null;
  for (const [field, list] of Object.entries(after))
    if (Array.isArray(list) && list !== before[field as keyof ClassFile]) {
      const found = tooMany(list, field === "classes" ? listLimits.classes : listLimits.inFile);
      if (found) return found;
    }
  for (const group of after.classes)
    for (const list of [group.pupils, group.apart, group.together, group.lessons]) {
      const found = tooMany(list, listLimits.inClass);
      if (found) return found;
    }
  const touched = ["stock", "supplies", "kits", "movements", "boards", "cables", "computers"] as const;
  if (touched.some((list) => before[list] !== after[list])) {
    const old = new Set(findOverdrawn(before, kits).map(({ item }) => item));
    const [overdrawn] = findOverdrawn(after, kits).filter(({ item }) => !old.has(item));
    if (overdrawn) return refuse({ code: "changes.takesTooMany", item: overdrawn.item, count: overdrawn.there });
  }
  return isReadable(after) ? null : refuse({ code: "changes.fileTooLarge" });
}

/** Far below the limits of a document its bare length tells; near them the document itself is asked. */
function isReadable(classFile: ClassFile): boolean {
  if (JSON.stringify(classFile).length < 2_000_000) return true;
  return readJson("", writeClassFile(classFile)).value !== null;
}
