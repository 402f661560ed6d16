// Whether what the school has and buys makes sense: items that exist, offers that hold something, movements that leave no less
// than nothing.
//
// Does not know: what a lesson needs.
import { near, type Path } from "../../base/index.ts";
import { catalogue } from "../../bench/parts/index.ts";
import type { ClassFileShape } from "./classFileShape.ts";
import { findOverdrawn } from "./findOverdrawn.ts";
import { nearItem, readItem } from "./itemText.ts";
import { type Judge, minutes } from "./judge.ts";

export function judgeItems({ document, report, isFull }: Judge, shape: ClassFileShape): void {
  const check = (list: readonly { readonly item?: string | undefined }[], path: Path) => {
    for (const [i, { item }] of list.entries())
      if (item !== undefined && !isFull() && readItem(item) === null)
        report({
          code: "file.unknownItem",
          place: document.place([...path, i, "item"]),
          found: item.slice(0, 60),
          near: nearItem(item),
        });
  };
  check(shape.stock, ["stock"]);
  check(shape.movements, ["movements"]);
  check(shape.supplies, ["supplies"]);
  check(shape.counts, ["counts"]);
  check(
    shape.decisions.map((d) => (d.kind === "skip" ? {} : { item: d.item })),
    ["decisions"],
  );
  for (const [s, supplier] of shape.suppliers.entries()) {
    check(supplier.offers, ["suppliers", s, "offers"]);
    for (const [o, offer] of supplier.offers.entries()) {
      const place = document.place(["suppliers", s, "offers", o]);
      const { id, item, kit, count } = offer;
      if (item === undefined && kit === undefined) report({ code: "file.offerHolds", place, offer: id, found: "nothing" });
      else if (item !== undefined && kit !== undefined) report({ code: "file.offerHolds", place, offer: id, found: "both" });
      else if (item !== undefined && count === undefined) report({ code: "file.offerWithoutCount", place, offer: id, item });
      else if (kit !== undefined && count !== undefined) report({ code: "file.kitWithCount", place, offer: id, kit });
    }
  }
}

export function judgeEquipment({ document, report }: Judge, shape: ClassFileShape): void {
  for (const [i, computer] of shape.computers.entries())
    if (computer.works && computer.usbPorts === 0)
      report({ code: "file.noPorts", place: document.place(["computers", i, "usbPorts"]), computer: computer.id });
  for (const [i, { item }] of shape.supplies.entries()) {
    const kind = item.split(" ")[0] ?? "";
    if (readItem(item) !== null && catalogue.get(kind)?.role !== "supply")
      report({
        code: "file.notASupply",
        place: document.place(["supplies", i, "item"]),
        found: item,
        near: near(
          kind,
          [...catalogue.values()].filter((k) => k.role === "supply").map((k) => k.id),
        ),
      });
  }
  for (const [i, { from, to }] of shape.powerCuts.entries())
    if (minutes(to) <= minutes(from))
      report({ code: "file.timesBackwards", place: document.place(["powerCuts", i, "to"]), from, to });
  for (const [i, { item, out, back, broken }] of shape.counts.entries())
    if (back + broken > out)
      report({ code: "file.moreBackThanOut", place: document.place(["counts", i, "back"]), item, out, back, broken });
}

/** More must not go than is there on the day. To be asked only where items and days are right. */
export function judgeMovements({ document, known, report }: Judge, shape: ClassFileShape): void {
  for (const [i, { change, why, item }] of shape.movements.entries()) {
    const place = document.place(["movements", i, "change"]);
    const expected = ["lost", "broken", "lent"].includes(why) ? "-" : why === "corrected" ? null : "+";
    const key = readItem(item) ?? item;
    if (change === 0) report({ code: "file.noChange", place, item: key });
    else if (expected !== null && expected !== (change > 0 ? "+" : "-"))
      report({ code: "file.wrongSign", place, item: key, why, found: change, expected });
  }
  for (const { item, movement, there, others } of findOverdrawn(shape, known.kits)) {
    const { date = "", change = 0 } = shape.movements[movement] ?? {};
    report({
      code: "file.takesTooMany",
      place: document.place(["movements", movement, "change"]),
      item,
      date,
      found: -change,
      there,
      near: there === 0 ? near(item, others) : null,
    });
  }
}
