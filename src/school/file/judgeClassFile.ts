// Whether a class file makes sense: everything that its shape cannot say.
//
// Ids that must exist, days that must exist, pairs that contradict each other, more taken from the cupboard than was in it.
// Each finding says where, what stands there and what was probably meant. Two lessons that need each other in the wrong
// order are not judged here: they are a matter of readiness.
// Does not know: how the text is written (classFileShape.ts), what a lesson needs.
import { currencyDecimals, type Document, hasErrors, near, type Path, parseDay, parseMoney } from "../../base/index.ts";
import type { ClassFileShape } from "./classFileShape.ts";
import type { FileProblem, IdOwner } from "./fileProblem.ts";
import { type Judge, type KnownFiles, makeJudge } from "./judge.ts";
import { judgeClass } from "./judgeClass.ts";
import { judgeEquipment, judgeItems, judgeMovements } from "./judgeCupboard.ts";

/** @returns everything that is wrong or doubtful, in no particular order. */
export function judgeClassFile(document: Document, shape: ClassFileShape, known: KnownFiles): readonly FileProblem[] {
  const { judge, problems } = makeJudge(document, known);
  judgeMoney(judge, shape);
  judgeDays(judge, shape);
  judgeIds(judge, shape);
  const { classes } = shape;
  if (classes.length === 0) judge.report({ code: "file.noClasses", place: document.place(["classes"]) });
  for (const [i, group] of classes.entries()) judgeClass(judge, group, ["classes", i]);
  judgeReferences(judge, shape);
  judgeItems(judge, shape);
  judgeEquipment(judge, shape);
  // Only where items and days are right can they be compared as text.
  if (!hasErrors(problems)) judgeMovements(judge, shape);
  return problems;
}

function judgeMoney({ document, report }: Judge, shape: ClassFileShape): void {
  const { currency } = shape;
  const currencies = Intl.supportedValuesOf("currency");
  const decimals = currencies.includes(currency) ? currencyDecimals(currency) : null;
  if (decimals === null) {
    const meant = currencies.includes(currency.toUpperCase()) ? currency.toUpperCase() : near(currency, currencies);
    report({ code: "file.unknownCurrency", place: document.place(["currency"]), found: currency.slice(0, 40), near: meant });
    return;
  }
  const check = (text: string | null, path: Path) => {
    if (text !== null && parseMoney(text, decimals) === null)
      report({ code: "file.tooFineSum", place: document.place(path), found: text, currency, decimals });
  };
  check(shape.budget, ["budget"]);
  for (const [s, supplier] of shape.suppliers.entries()) {
    check(supplier.shipping, ["suppliers", s, "shipping"]);
    check(supplier.freeFrom, ["suppliers", s, "freeFrom"]);
    for (const [o, offer] of supplier.offers.entries()) check(offer.price, ["suppliers", s, "offers", o, "price"]);
  }
}

/** A day must exist, and lie in the years 2000 to 2199: anything else is a slip, such as 0227 for 2027. */
function judgeDays({ document, report }: Judge, shape: ClassFileShape): void {
  const check = (list: readonly { readonly date: string }[], path: Path) => {
    for (const [i, { date }] of list.entries())
      if (parseDay(date) === null || !/^2[01]/.test(date))
        report({ code: "file.noSuchDay", place: document.place([...path, i, "date"]), found: date });
  };
  for (const [i, group] of shape.classes.entries()) check(group.lessons, ["classes", i, "lessons"]);
  check(shape.movements, ["movements"]);
  check(shape.powerCuts, ["powerCuts"]);
  check(shape.decisions, ["decisions"]);
  check(shape.counts, ["counts"]);
  check(shape.log, ["log"]);
}

function judgeIds({ document, report }: Judge, shape: ClassFileShape): void {
  const check = (ids: readonly string[], path: (i: number) => Path, what: IdOwner) => {
    const first = new Map<string, number>();
    for (const [i, id] of ids.entries()) {
      const before = first.get(id);
      if (before === undefined) first.set(id, i);
      else
        report({
          code: "file.sameId",
          place: document.place(path(i)),
          what,
          found: id,
          firstLine: document.place(path(before)).line,
        });
    }
  };
  const idsOf = (list: readonly { readonly id: string }[], path: Path, what: IdOwner) =>
    check(
      list.map((entry) => entry.id),
      (i) => [...path, i, "id"],
      what,
    );
  idsOf(shape.classes, ["classes"], "class");
  for (const [i, group] of shape.classes.entries()) idsOf(group.pupils, ["classes", i, "pupils"], "pupil");
  check(
    shape.kits.map((k) => k.kit),
    (i) => ["kits", i, "kit"],
    "kit",
  );
  idsOf(shape.suppliers, ["suppliers"], "supplier");
  for (const [i, supplier] of shape.suppliers.entries()) idsOf(supplier.offers, ["suppliers", i, "offers"], "offer");
  idsOf(shape.computers, ["computers"], "computer");
  idsOf(shape.boards, ["boards"], "board");
  idsOf(shape.cables, ["cables"], "cable");
}

function judgeReferences({ document, known, report, isFull }: Judge, shape: ClassFileShape): void {
  const classes = new Set(shape.classes.map((group) => group.id));
  const checkClass = (id: string, path: Path) => {
    // A log or a count may be of a class that left the school: doubtful, but not wrong.
    if (classes.size > 0 && !classes.has(id) && !isFull())
      report({
        code: "file.unknownClass",
        severity: "warning",
        place: document.place(path),
        found: id,
        near: near(id, classes),
      });
  };
  for (const [i, entry] of shape.counts.entries()) checkClass(entry.class, ["counts", i, "class"]);
  for (const [i, entry] of shape.log.entries()) checkClass(entry.class, ["log", i, "class"]);
  for (const [i, entry] of shape.decisions.entries())
    if (entry.kind === "skip") checkClass(entry.class, ["decisions", i, "class"]);
  const { kits } = known;
  if (!kits) return;
  const checkKit = (id: string, path: Path) => {
    if (!kits.has(id)) report({ code: "file.unknownKit", place: document.place(path), found: id, near: near(id, kits.keys()) });
  };
  for (const [i, { kit }] of shape.kits.entries()) checkKit(kit, ["kits", i, "kit"]);
  for (const [s, supplier] of shape.suppliers.entries())
    for (const [o, { kit }] of supplier.offers.entries())
      if (kit !== undefined) checkKit(kit, ["suppliers", s, "offers", o, "kit"]);
}
