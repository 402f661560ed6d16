// Changes of the whole file, of money, and of what is written down after a lesson.
//
// Does not know: classes and their lessons, the cupboard.
import { near } from "../../base/index.ts";
import { type ClassFile, type CountIn, readClassFile, type Supplier, writeClassFile } from "../file/index.ts";
import type { Change } from "./change.ts";
import { counted } from "./changePupils.ts";
import { decimalsOf } from "./changeShape.ts";
import { type ChangeContext, done, findClass, isSame, type Outcome, put, refuse, without } from "./outcome.ts";

type Of<Kind extends Change["kind"]> = Extract<Change, { readonly kind: Kind }>;

/** Sums keep their figure: 3.40 stays 3.40, and is rounded where the new currency has fewer decimals. */
export function setCurrency(classFile: ClassFile, { currency, decimals }: Of<"set-currency">): Outcome {
  if (decimals !== decimalsOf(currency)) return refuse({ code: "changes.badCurrency", found: currency, near: null });
  if (currency === classFile.currency) return done(classFile);
  if (decimals === classFile.decimals) return done({ ...classFile, currency });
  let rounded = 0;
  const convert = <Sum extends number | null>(sum: Sum): Sum => {
    if (sum === null) return sum;
    const exact = sum * 10 ** (decimals - classFile.decimals);
    const whole = Math.min(Math.round(exact), largestSum(decimals));
    // Figures with many digits meet the limits of binary fractions, not of the currency.
    if (Math.abs(whole - exact) > 1e-6) rounded += 1;
    return whole as Sum;
  };
  const suppliers = classFile.suppliers.map((supplier) => ({
    ...supplier,
    shipping: convert(supplier.shipping),
    freeFrom: convert(supplier.freeFrom),
    offers: supplier.offers.map((offer) => ({ ...offer, price: convert(offer.price) })),
  }));
  const next = { ...classFile, currency, decimals, budget: convert(classFile.budget), suppliers };
  return done(next, counted("sumsRounded", rounded));
}

/** Another state of the class in place of this one, where it can be written and read again. */
export function takeWhole(classFile: ClassFile, { file }: Of<"restore-day" | "join-copy">): Outcome {
  if (file === undefined) return done(classFile);
  const read = written(file);
  return read ? done(read) : refuse({ code: "changes.badChange", found: "file" });
}

function written(file: ClassFile): ClassFile | null {
  try {
    return readClassFile("class.json", writeClassFile(file)).value;
  } catch {
    return null;
  }
}

export function setBudget(classFile: ClassFile, { budget }: Of<"set-budget">): Outcome {
  if (budget !== null && budget > largestSum(classFile.decimals))
    return refuse({ code: "changes.badSum", found: String(budget) });
  return done({ ...classFile, budget });
}

export function setSupplier(classFile: ClassFile, { supplier }: Of<"set-supplier">, { kits }: ChangeContext): Outcome {
  const sums = [supplier.shipping, supplier.freeFrom ?? 0, ...supplier.offers.map((offer) => offer.price)];
  const large = sums.find((sum) => sum > largestSum(classFile.decimals));
  if (large !== undefined) return refuse({ code: "changes.badSum", found: String(large) });
  const ids = supplier.offers.map((offer) => offer.id);
  const again = ids.find((id, i) => ids.indexOf(id) !== i);
  if (again !== undefined) return refuse({ code: "changes.alreadyThere", found: again });
  const before = classFile.suppliers.find((s) => s.id === supplier.id);
  for (const { contains } of kits ? supplier.offers : [])
    if (contains.kind === "kit" && !kits?.has(contains.kit) && !before?.offers.some((o) => isSame(o.contains, contains)))
      return refuse({ code: "changes.unknownKit", found: contains.kit, near: near(contains.kit, kits?.keys() ?? []) });
  return done({ ...classFile, suppliers: put(classFile.suppliers, supplier, (s: Supplier) => s.id) });
}

export function removeSupplier(classFile: ClassFile, { id }: Of<"remove-supplier">): Outcome {
  const suppliers = without(classFile.suppliers, (supplier) => supplier.id === id);
  return suppliers === classFile.suppliers ? refuse({ code: "changes.notThere", found: id }) : done({ ...classFile, suppliers });
}

/** Several counts of one item after one lesson are of several trays and add up; an earlier count of it is corrected. */
export function countIn(classFile: ClassFile, { counts }: Of<"count-in">): Outcome {
  const key = ({ date, class: group, lesson, item }: CountIn) => [group, lesson, date, item].join("/");
  const added = new Map<string, CountIn>();
  for (const count of counts) {
    const found = findClass(classFile, count.class);
    if ("problem" in found) return found;
    const before = added.get(key(count));
    const { out = 0, back = 0, broken = 0 } = before ?? {};
    const total = { ...count, out: out + count.out, back: back + count.back, broken: broken + count.broken };
    if (total.out > 1_000_000) return refuse({ code: "changes.badCount", found: String(total.out) });
    added.set(key(count), total);
  }
  const left = without(classFile.counts, (count) => added.has(key(count)) && !isSame(count, added.get(key(count))));
  const more = [...added.values()].filter((count) => !left.some((old) => isSame(old, count)));
  return done(more.length === 0 && left === classFile.counts ? classFile : { ...classFile, counts: [...left, ...more] });
}

export function log(classFile: ClassFile, { entry }: Of<"log">): Outcome {
  const found = findClass(classFile, entry.class);
  return "problem" in found ? found : done({ ...classFile, log: [...classFile.log, entry] });
}

export function takeBackLog(classFile: ClassFile, { entry }: Of<"take-back-log">): Outcome {
  const last = classFile.log.findLast((other) => isSame(other, entry));
  if (!last) return refuse({ code: "changes.notThere", found: entry.what.slice(0, 60) });
  return done({ ...classFile, log: without(classFile.log, (other) => other === last) });
}

/** The class file writes up to nine digits before the point. */
function largestSum(decimals: number): number {
  return 10 ** (9 + decimals) - 1;
}
