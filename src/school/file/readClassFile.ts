// Reads a class file: JSON text to a ClassFile, or everything that is wrong with it.
//
// In this order: notation, version, shape, sense. Each step speaks only if the one before found nothing, so that one slip is
// told once and nothing is half-read.
// Does not know: where the file lies, which lessons exist unless it is told.
import {
  checkShape,
  currencyDecimals,
  type Day,
  hasErrors,
  type Money,
  parseMoney,
  parseQuantity,
  type Reading,
  readJson,
  sortProblems,
} from "../../base/index.ts";
import type { ClassFile, ClassGroup, Decision, Supplier } from "./classFile.ts";
import { type ClassFileShape, classFileShape } from "./classFileShape.ts";
import type { FileProblem } from "./fileProblem.ts";
import { bringToNewest, type Format } from "./formatVersion.ts";
import { readItem } from "./itemText.ts";
import { type KnownFiles, minutes } from "./judge.ts";
import { judgeClassFile } from "./judgeClassFile.ts";
import { leftOut } from "./leftOut.ts";

/** Version 1 is the first; what leads from it to a next one will stand here. */
const classFormat: Format = { name: "benchday-class", newest: 1, migrations: new Map() };

/**
 * Reads a class file. Never throws.
 *
 * @param file name for the places of problems.
 * @param known what lies beside it: with the lessons, unknown ones and overlaps are found; with the kits, unknown ones and
 * movements of more than there is.
 * @returns the class file, or null if any problem is an error; problems are sorted, errors first.
 */
export function readClassFile(file: string, text: string, known: KnownFiles = {}): Reading<ClassFile, FileProblem> {
  const document = readJson(file, text);
  if (document.value === null) return { value: null, problems: document.problems };
  const newest = bringToNewest(document.value, classFormat);
  if (newest.value === null) return { value: null, problems: newest.problems };
  const shape = checkShape<ClassFileShape>(newest.value, classFileShape);
  if (shape.value === null) return { value: null, problems: shape.problems };
  const problems = sortProblems([...leftOut(file, text, "document"), ...judgeClassFile(newest.value, shape.value, known)]);
  return { value: hasErrors(problems) ? null : toClassFile(shape.value), problems };
}

/** Text to numbers; everything was checked before. */
function toClassFile(shape: ClassFileShape): ClassFile {
  const decimals = currencyDecimals(shape.currency) ?? 2;
  const money = (text: string): Money => parseMoney(text, decimals) ?? 0;
  const moneyOrNull = (text: string | null) => (text === null ? null : money(text));
  return {
    format: "benchday-class/1",
    about: shape.about,
    lessonFolder: shape.lessonFolder,
    kitFolder: shape.kitFolder,
    language: shape.language,
    currency: shape.currency,
    decimals,
    chance: readChance(shape.chance),
    budget: moneyOrNull(shape.budget),
    room: shape.room,
    classes: shape.classes.map(toClass),
    kits: shape.kits,
    stock: shape.stock.map(withItem),
    movements: shape.movements.map((movement) => ({ ...withItem(movement), date: movement.date as Day })),
    suppliers: shape.suppliers.map(
      (supplier): Supplier => ({
        id: supplier.id,
        name: supplier.name ?? supplier.id,
        shipping: money(supplier.shipping),
        freeFrom: moneyOrNull(supplier.freeFrom),
        days: supplier.days,
        offers: supplier.offers.map(({ id, item, kit, count, price, available }) => ({
          id,
          contains:
            kit === undefined ? { kind: "item", item: readItem(item ?? "") ?? "", count: count ?? 1 } : { kind: "kit", kit },
          price: money(price),
          available,
        })),
      }),
    ),
    computers: shape.computers,
    boards: shape.boards,
    cables: shape.cables.map((cable) => ({ ...cable, deadPins: [] })),
    supplies: shape.supplies.map(withItem),
    powerCuts: shape.powerCuts.map(({ date, from, to }) => ({ date: date as Day, from: minutes(from), to: minutes(to) })),
    decisions: shape.decisions.map((decision): Decision => {
      const date = decision.date as Day;
      return decision.kind === "skip" ? { ...decision, date } : { ...withItem(decision), date };
    }),
    ...(shape.prepared.length > 0 ? { prepared: shape.prepared } : {}),
    counts: shape.counts.map((entry) => ({ ...withItem(entry), date: entry.date as Day })),
    log: shape.log.map((entry) => ({ ...entry, date: entry.date as Day })),
  };
}

function toClass(group: ClassFileShape["classes"][number]): ClassGroup {
  return {
    id: group.id,
    name: group.name ?? group.id,
    teamSize: group.teamSize,
    pupils: group.pupils.map(({ id, name, marks }) => ({
      id,
      name,
      // Adding nought turns the minus nought that JSON allows into nought.
      marks: Object.fromEntries(Object.entries(marks).map(([column, mark]) => [column, mark + 0])),
    })),
    apart: group.apart.map(([a = "", b = ""]) => [a, b] as const),
    together: group.together,
    balance: group.balance,
    lessons: group.lessons.map(({ lesson, date, start, absent }) => ({
      lesson,
      date: date as Day,
      start: minutes(start),
      absent,
    })),
  };
}

function withItem<Entry extends { readonly item: string }>(entry: Entry): Entry {
  return { ...entry, item: readItem(entry.item) ?? entry.item };
}

function readChance(written: string | number): number {
  const read = parseQuantity(written, "%");
  return read.status === "read" ? read.value : 0;
}
