// An order as its place shows it: each line with its supplier, what is in a packet, and why by lesson; and what it changes
// in the cupboard when it has come.
//
// Does not know: words, how the order was found.
import type { Day, Money } from "../../../base/index.ts";
import type { Change } from "../../../school/changes/index.ts";
import type { ClassFile, ItemKey, Kit, Movement, Offer, Supplier } from "../../../school/file/index.ts";
import type { OrderPlan } from "../../../school/order/index.ts";

type PlannedLine = OrderPlan["lines"][number];

export interface SupplierOrder {
  readonly supplier: Supplier;
  readonly lines: readonly { readonly line: PlannedLine; readonly offer: Offer | null }[];
  readonly shipping: Money;
  /** The earliest of its lines. */
  readonly by: Day;
}

/** @returns the order supplier by supplier, the one to be ordered first on top; its lines by day too. */
export function bySupplier(order: Pick<OrderPlan, "lines" | "shipping">, suppliers: readonly Supplier[]): SupplierOrder[] {
  return suppliers
    .flatMap((supplier): SupplierOrder[] => {
      const lines = order.lines
        .filter((line) => line.supplier === supplier.id)
        .map((line) => ({ line, offer: supplier.offers.find((offer) => offer.id === line.offer) ?? null }))
        .sort((a, b) => compare(a.line.orderBy, b.line.orderBy));
      const shipping = order.shipping.filter((s) => s.supplier === supplier.id).reduce((sum, s) => sum + s.cost, 0);
      const [first] = lines;
      return first ? [{ supplier, lines, shipping, by: first.line.orderBy }] : [];
    })
    .sort((a, b) => compare(a.by, b.by));
}

export interface WhyOfLesson {
  readonly sitting: string;
  readonly things: readonly PlannedLine["why"][number][];
}

/** The reasons of a line, lesson by lesson in the order of their days. */
export function whyByLesson(line: Pick<PlannedLine, "why">): WhyOfLesson[] {
  const bySitting = new Map<string, PlannedLine["why"][number][]>();
  for (const why of line.why) bySitting.set(why.sitting, [...(bySitting.get(why.sitting) ?? []), why]);
  const day = (sitting: string) => sitting.slice(-10);
  return [...bySitting].map(([sitting, things]) => ({ sitting, things })).sort((a, b) => compare(day(a.sitting), day(b.sitting)));
}

/** Lists in which boards, cables and computers stand one by one; where there is a list, it is the count. */
const lists = { board: "boards", "usb-cable": "cables", computer: "computers" } as const;

/**
 * What changes in the cupboard when these lines have come, as acts.
 *
 * Things are movements. A kit counts as a kit. Boards, cables and computers that are listed one by one are added to their
 * list, because movements of what is listed count for nothing (school/stock).
 */
export function whatCame(
  lines: readonly Pick<PlannedLine, "supplier" | "offer" | "packets">[],
  classFile: Pick<ClassFile, "suppliers" | "kits" | "boards" | "cables" | "computers">,
  kits: ReadonlyMap<string, Kit>,
  today: Day,
): Change[] {
  const movements: Movement[] = [];
  const listed = new Map<"boards" | "cables" | "computers", number>();
  const boxes = new Map<string, number>();
  const toList = (item: ItemKey, count: number) => {
    const list = lists[item as keyof typeof lists];
    if (list === undefined || classFile[list].length === 0) return false;
    listed.set(list, (listed.get(list) ?? classFile[list].length) + count);
    return true;
  };
  for (const { supplier: id, offer: offerId, packets } of lines) {
    const supplier = classFile.suppliers.find((s) => s.id === id);
    const contains = supplier?.offers.find((o) => o.id === offerId)?.contains;
    if (!supplier || !contains) continue;
    if (contains.kind === "kit") {
      const before = classFile.kits.find((k) => k.kit === contains.kit)?.count ?? 0;
      boxes.set(contains.kit, (boxes.get(contains.kit) ?? before) + packets);
      for (const [item, each] of kits.get(contains.kit)?.contents ?? []) toList(item, each * packets);
    } else if (!toList(contains.item, contains.count * packets))
      movements.push({
        date: today,
        item: contains.item,
        change: contains.count * packets,
        why: "bought",
        note: supplier.name,
      });
  }
  return [
    ...(movements.length > 0 ? [{ kind: "order-came" as const, movements }] : []),
    ...[...listed].map(([what, count]): Change => ({ kind: "count-devices", what, count })),
    ...[...boxes].map(([kit, count]): Change => ({ kind: "set-kit", kit, count })),
  ];
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
