// Changes of what the school has: kits, stock, movements, computers, boards, cables, supplies, power cuts.
//
// A line of stock is told by its item and its box; what is numbered by its id.
// Does not know: what a lesson needs, whether more is taken than is there (applyChange.ts looks at that for all changes).
import { near } from "../../base/index.ts";
import type { ClassFile, Computer, Device, StockLine } from "../file/index.ts";
import type { Change } from "./change.ts";
import { freshIds } from "./freshId.ts";
import { type ChangeContext, done, isSame, type Outcome, put, refuse, replaced, without } from "./outcome.ts";

type Of<Kind extends Change["kind"]> = Extract<Change, { readonly kind: Kind }>;

/** None of a kit: the kit is not in the list. */
export function setKit(classFile: ClassFile, { kit, count }: Of<"set-kit">, { kits: known }: ChangeContext): Outcome {
  const before = classFile.kits.find((line) => line.kit === kit);
  if (before === undefined && known && !known.has(kit))
    return refuse({ code: "changes.unknownKit", found: kit, near: near(kit, known.keys()) });
  if (before?.count === count || (before === undefined && count === 0)) return done(classFile);
  const kits =
    count === 0 ? without(classFile.kits, (line) => line.kit === kit) : put(classFile.kits, { kit, count }, (line) => line.kit);
  return done({ ...classFile, kits });
}

export function setStock(classFile: ClassFile, { line }: Of<"set-stock">): Outcome {
  return done({ ...classFile, stock: withLine(classFile.stock, line) });
}

export function removeStock(classFile: ClassFile, { item, box }: Of<"remove-stock">): Outcome {
  const stock = without(classFile.stock, (line) => line.item === item && line.box === box);
  return stock === classFile.stock ? refuse({ code: "changes.notThere", found: item }) : done({ ...classFile, stock });
}

/** A line that names no box means where its item lies already. */
export function takeStock(classFile: ClassFile, { lines, how }: Of<"take-stock">): Outcome {
  const listed = lines.reduce<readonly StockLine[]>(
    (list, line) => withLine(list, { ...line, count: line.count + (list.find(isPlaceOf(line))?.count ?? 0) }),
    [],
  );
  if (how === "replace") return done(isSame(listed, classFile.stock) ? classFile : { ...classFile, stock: listed });
  let stock = classFile.stock;
  for (const line of listed) {
    const lying = stock.filter((other) => other.item === line.item);
    const place = stock.find(isPlaceOf(line)) ?? (line.box === "" ? lying[0] : undefined);
    if (!place) stock = [...stock, line];
    else if (how === "add") stock = replaced(stock, stock.indexOf(place), { ...place, count: place.count + line.count });
    else {
      // Named without a box, the count is of all that there is of the item: it is put in one place.
      const isEmptied = (other: StockLine) => line.box === "" && other !== place && other.item === line.item && other.count !== 0;
      stock = stock.map((other) => {
        if (other === place) return place.count === line.count ? place : { ...place, count: line.count };
        return isEmptied(other) ? { ...other, count: 0 } : other;
      });
    }
  }
  const isNew = stock.length !== classFile.stock.length || stock.some((line, i) => line !== classFile.stock[i]);
  if (stock.some((line) => line.count > 1_000_000)) return refuse({ code: "changes.badCount", found: "1000000+" });
  return done(isNew ? { ...classFile, stock } : classFile);
}

export function moveStock(classFile: ClassFile, { movement }: Of<"move-stock">): Outcome {
  return done({ ...classFile, movements: [...classFile.movements, movement] });
}

export function orderCame(classFile: ClassFile, { movements }: Of<"order-came">): Outcome {
  if (movements.length === 0) return done(classFile);
  return done({ ...classFile, movements: [...classFile.movements, ...movements] });
}

export function setComputer(classFile: ClassFile, { computer }: Of<"set-computer">): Outcome {
  return done({ ...classFile, computers: put(classFile.computers, computer, (c) => c.id) });
}

export function removeComputer(classFile: ClassFile, { id }: Of<"remove-computer">): Outcome {
  const computers = without(classFile.computers, (computer) => computer.id === id);
  if (computers === classFile.computers) return refuse({ code: "changes.notThere", found: id });
  return done({ ...classFile, computers });
}

export function setDevice(classFile: ClassFile, { what, device }: Of<"set-device">): Outcome {
  // A cable has no pins.
  const entry = what === "cables" ? { ...device, deadPins: [] } : device;
  return done({ ...classFile, [what]: put(classFile[what], entry, (d) => d.id) });
}

export function removeDevice(classFile: ClassFile, { what, id }: Of<"remove-device">): Outcome {
  const devices = without(classFile[what], (device) => device.id === id);
  return devices === classFile[what] ? refuse({ code: "changes.notThere", found: id }) : done({ ...classFile, [what]: devices });
}

/** Those about which something is known stay longest. */
export function countDevices(classFile: ClassFile, { what, count }: Of<"count-devices">, { retired }: ChangeContext): Outcome {
  const list: readonly (Computer | Device)[] = classFile[what];
  if (list.length === count) return done(classFile);
  if (list.length > count) {
    const isPlain = (entry: Computer | Device) =>
      entry.works && entry.note === "" && ("deadPins" in entry ? entry.deadPins.length === 0 : entry.batteryMinutes === null);
    const leaving = new Set(
      [...list]
        .reverse()
        .sort((a, b) => Number(isPlain(b)) - Number(isPlain(a)))
        .slice(0, list.length - count),
    );
    return done({ ...classFile, [what]: list.filter((entry) => !leaving.has(entry)) });
  }
  const ids = list.map((entry) => entry.id);
  const next = freshIds(what, ids, usualIds[what], retired);
  const more = Array.from({ length: count - list.length }, () => newDevice(what, next()));
  return done({ ...classFile, [what]: [...list, ...more] });
}

const usualIds = { boards: "board-01", cables: "cable-01", computers: "computer-01" } as const;

/** A device about which nothing is known but that it is there. A USB 2.0 port gives 500 mA (USB 2.0 specification, 7.2.1). */
function newDevice(what: "boards" | "cables" | "computers", id: string): Computer | Device {
  if (what === "computers") return { id, works: true, batteryMinutes: null, usbMilliamps: 500, usbPorts: 2, note: "" };
  return { id, works: true, deadPins: [], note: "" };
}

export function setSupply(classFile: ClassFile, { line }: Of<"set-supply">): Outcome {
  return done({ ...classFile, supplies: withLine(classFile.supplies, line) });
}

export function removeSupply(classFile: ClassFile, { item, box }: Of<"remove-supply">): Outcome {
  const supplies = without(classFile.supplies, (line) => line.item === item && line.box === box);
  return supplies === classFile.supplies ? refuse({ code: "changes.notThere", found: item }) : done({ ...classFile, supplies });
}

export function addPowerCut(classFile: ClassFile, { cut }: Of<"add-power-cut">): Outcome {
  if (classFile.powerCuts.some((other) => isSame(other, cut))) return refuse({ code: "changes.alreadyThere", found: cut.date });
  return done({ ...classFile, powerCuts: [...classFile.powerCuts, cut] });
}

export function removePowerCut(classFile: ClassFile, { cut }: Of<"remove-power-cut">): Outcome {
  const powerCuts = without(classFile.powerCuts, (other) => isSame(other, cut));
  return powerCuts === classFile.powerCuts
    ? refuse({ code: "changes.notThere", found: cut.date })
    : done({ ...classFile, powerCuts });
}

function isPlaceOf(line: StockLine): (other: StockLine) => boolean {
  return (other) => other.item === line.item && other.box === line.box;
}

/** Of several lines for one place only the first stays: what is set is what lies there. */
function withLine(lines: readonly StockLine[], line: StockLine): readonly StockLine[] {
  const first = lines.find(isPlaceOf(line));
  if (!first) return [...lines, line];
  const left = without(lines, (other) => other !== first && isPlaceOf(line)(other));
  return left === lines && first.count === line.count ? lines : replaced(left, left.indexOf(first), line);
}
