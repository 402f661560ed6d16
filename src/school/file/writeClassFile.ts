// Writes a class file as text that a person can read and compare: one entry a line, always in the same order.
//
// Every list of the file is there even when it is empty, so that a teacher sees what could be said; fields of an entry that
// say nothing are left out. Reading what was written gives the same class file, and writing that the same bytes.
// Does not know: where the text goes.
import { type Money, parseQuantity, writeMoney } from "../../base/index.ts";
import type { ClassFile, ClassGroup, Offer, Supplier } from "./classFile.ts";

type Json = string | number | boolean | null | readonly Json[] | { readonly [field: string]: Json | undefined };

/** @returns the text of the class file, with a line end at the end. */
export function writeClassFile(classFile: ClassFile): string {
  const { decimals } = classFile;
  const document: Json = {
    format: classFile.format,
    about: classFile.about,
    language: classFile.language,
    currency: classFile.currency,
    chance: writeChance(classFile.chance),
    budget: moneyOrNull(classFile.budget, decimals),
    lessonFolder: classFile.lessonFolder,
    kitFolder: classFile.kitFolder,
    room: { ...classFile.room },
    classes: classFile.classes.map(classToJson),
    kits: classFile.kits.map(({ kit, count }) => ({ kit, count })),
    stock: classFile.stock.map(({ item, count, box }) => ({ item, count, box: said(box) })),
    movements: classFile.movements.map(({ date, item, change, why, note }) => ({ date, item, change, why, note: said(note) })),
    suppliers: classFile.suppliers.map((supplier) => supplierToJson(supplier, decimals)),
    computers: classFile.computers.map(({ id, works, batteryMinutes, usbMilliamps, usbPorts, note }) => ({
      id,
      works,
      batteryMinutes,
      usbMilliamps,
      usbPorts,
      note: said(note),
    })),
    boards: classFile.boards.map(({ id, works, deadPins, note }) => ({
      id,
      works,
      deadPins: deadPins.length > 0 ? deadPins : undefined,
      note: said(note),
    })),
    cables: classFile.cables.map(({ id, works, note }) => ({ id, works, note: said(note) })),
    supplies: classFile.supplies.map(({ item, count, box }) => ({ item, count, box: said(box) })),
    powerCuts: classFile.powerCuts.map(({ date, from, to }) => ({ date, from: writeTime(from), to: writeTime(to) })),
    decisions: classFile.decisions.map((decision): Json => {
      const { kind, lesson, date } = decision;
      if (decision.kind === "skip") return { kind, lesson, class: decision.class, date };
      if (decision.kind === "supply") return { kind, lesson, item: decision.item, date };
      return { kind, lesson, part: decision.part, item: decision.item, date };
    }),
    // Came later than the others: a file without it is written as it was.
    prepared: classFile.prepared?.length ? classFile.prepared.map(({ sitting, what }) => ({ sitting, what })) : undefined,
    counts: classFile.counts.map(({ date, class: group, lesson, item, out, back, broken }) => ({
      date,
      class: group,
      lesson,
      item,
      out,
      back,
      broken,
    })),
    log: classFile.log.map(({ date, class: group, lesson, team, what, note }) => ({
      date,
      class: group,
      lesson,
      team: team ?? undefined,
      what,
      note: said(note),
    })),
  };
  return `${layOut(document, "", true)}\n`;
}

function classToJson(group: ClassGroup): Json {
  return {
    id: group.id,
    name: group.name,
    teamSize: group.teamSize,
    balance: group.balance,
    pupils: group.pupils.map(({ id, name, marks }) => ({
      id,
      name,
      marks: Object.keys(marks).length > 0 ? marks : undefined,
    })),
    apart: group.apart,
    together: group.together,
    lessons: group.lessons.map(({ lesson, date, start, absent }) => ({
      lesson,
      date,
      start: writeTime(start),
      absent: absent.length > 0 ? absent : undefined,
    })),
  };
}

function supplierToJson(supplier: Supplier, decimals: number): Json {
  const { id, name, shipping, freeFrom, days, offers } = supplier;
  return {
    id,
    name,
    shipping: writeMoney(shipping, decimals),
    freeFrom: moneyOrNull(freeFrom, decimals),
    days,
    offers: offers.map(({ id, contains, price, available }: Offer) => ({
      id,
      ...(contains.kind === "kit" ? { kit: contains.kit } : { item: contains.item, count: contains.count }),
      price: writeMoney(price, decimals),
      available: available ?? undefined,
    })),
  };
}

function moneyOrNull(money: Money | null, decimals: number): string | null {
  return money === null ? null : writeMoney(money, decimals);
}

/** As percent where that is exact, otherwise as the bare number. */
function writeChance(chance: number): string | number {
  const percent = `${Number((chance * 100).toPrecision(12))} %`;
  const read = parseQuantity(percent, "%");
  return read.status === "read" && read.value === chance && /^\d{1,2}(?:\.\d+)? %$/.test(percent) ? percent : chance;
}

function writeTime(minutes: number): string {
  const two = (n: number) => String(n).padStart(2, "0");
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** Undefined for a text that says nothing: it is left out. */
function said(text: string): string | undefined {
  return text === "" ? undefined : text;
}

/** Lists of entries take a line for each; what holds no such list stands on one line. */
function layOut(value: Json, indent: string, opened: boolean): string {
  const inner = `${indent}  `;
  if (isList(value)) {
    if (!value.some((entry) => typeof entry === "object" && entry !== null)) return oneLine(value);
    return `[\n${value.map((entry) => inner + layOut(entry, inner, false)).join(",\n")}\n${indent}]`;
  }
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const fields = Object.entries(value).filter((field): field is [string, Json] => field[1] !== undefined);
  const isLong = opened || fields.some(([, inside]) => isList(inside) && inside.some((entry) => typeof entry === "object"));
  if (!isLong) return oneLine(value);
  return `{\n${fields.map(([name, inside]) => `${inner}${JSON.stringify(name)}: ${layOut(inside, inner, false)}`).join(",\n")}\n${indent}}`;
}

function oneLine(value: Json): string {
  if (isList(value)) return `[${value.map(oneLine).join(", ")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const fields = Object.entries(value).filter((field): field is [string, Json] => field[1] !== undefined);
  if (fields.length === 0) return "{}";
  return `{ ${fields.map(([name, inside]) => `${JSON.stringify(name)}: ${oneLine(inside)}`).join(", ")} }`;
}

function isList(value: Json | undefined): value is readonly Json[] {
  return Array.isArray(value);
}
