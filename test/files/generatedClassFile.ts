// Class files by chance, for laws that must hold for every class file: all of them are right, and all of them different.
//
// Texts are any that a class file can hold; sums, days and times cover their whole range.
import fc from "fast-check";
import { addDays, type Day, plainText } from "../../src/base/index.ts";
import { catalogue, itemKey, parseItemKey } from "../../src/bench/parts/index.ts";
import type { ClassFile, ClassGroup, Decision, Movement, Supplier } from "../../src/school/file/index.ts";

const control = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/g;
const text = fc.string({ unit: "grapheme", maxLength: 12 }).map((s) => plainText(s).replace(control, ""));
const name = text.map((s) => (/\S/.test(s) ? s : `${s}A`));
const idText = fc.stringMatching(/^[A-Za-z0-9é][A-Za-z0-9 ._+'é-]{0,8}$/).map((s) => s.trimEnd().normalize("NFC"));
const count = fc.integer({ min: 0, max: 1_000_000 });
const packet = fc.integer({ min: 1, max: 1_000_000 });
const day = fc.integer({ min: 0, max: 20_000 }).map((n) => addDays("2020-01-01" as Day, n));
const minute = fc.integer({ min: 0, max: 1439 });
const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });

/** Every kind of the catalogue with its usual values, and values of our own where a kind has them. */
const items = [
  ...[...catalogue.keys()].flatMap((kind) => (parseItemKey(kind) ? [itemKey(kind, parseItemKey(kind)!.values)] : [])),
  ...["resistor 220", "resistor 4k7", "resistor 1M", "resistor 2R2", "led green emerald", "adapter 2000mA", "usb-port 900mA"],
];
const item = fc.constantFrom(...items);
const supplyItem = fc.constantFrom(
  "battery-9v",
  "power-bank",
  "adapter 1000mA",
  "adapter 2000mA",
  "usb-port 500mA",
  "battery-4aa nimh",
);

const byId = <T>(entry: (id: string) => fc.Arbitrary<T>, most: number) =>
  fc.uniqueArray(idText, { maxLength: most }).chain((ids) => fc.tuple(...ids.map(entry)) as fc.Arbitrary<T[]>);

function sum(decimals: number) {
  // Nine digits before the point, as the file takes them.
  return fc.integer({ min: 0, max: 999_999_999 * 10 ** Math.min(decimals, 3) });
}

const mark = fc.oneof(fc.integer({ min: -9, max: 9 }), fc.double({ noNaN: true, noDefaultInfinity: true })).map((n) => n + 0);

const group = (id: string): fc.Arbitrary<ClassGroup> =>
  fc
    .record({
      ids: fc.uniqueArray(idText, { minLength: 1, maxLength: 8 }),
      names: fc.array(name, { minLength: 8, maxLength: 8 }),
      column: fc.constantFrom("reads", "runs", "__x", "7"),
      marks: fc.array(mark, { minLength: 8, maxLength: 8 }),
      isBalanced: fc.boolean(),
      teamSize: fc.integer({ min: 2, max: 6 }),
      dates: fc.uniqueArray(fc.tuple(day, minute, idText), { maxLength: 4, selector: ([date]) => date }),
      className: name,
      wishes: fc.integer({ min: 0, max: 3 }),
    })
    .map(({ ids, names, column, marks, isBalanced, teamSize, dates, className, wishes }) => {
      const [a, b, c, d] = ids;
      return {
        id,
        name: className,
        teamSize,
        pupils: ids.map((pupil, i) => ({
          id: pupil,
          name: names[i]!,
          marks: isBalanced || i % 2 === 0 ? { [column]: marks[i]! } : {},
        })),
        apart: wishes % 2 === 1 && b !== undefined ? [[a!, b]] : [],
        together: wishes > 1 && d !== undefined ? [[c!, d]] : [],
        balance: isBalanced ? column : null,
        lessons: dates.map(([date, start, lesson], i) => ({ lesson, date, start, absent: i % 2 === 0 ? [a!] : [] })),
      };
    });

const whys = { bought: 1, found: 1, returned: 1, lost: -1, broken: -1, lent: -1 } as const;
const movement: fc.Arbitrary<Movement> = fc
  .record({
    date: day,
    item,
    size: fc.integer({ min: 1, max: 1000 }),
    why: fc.constantFrom(...(Object.keys(whys) as (keyof typeof whys)[])),
    note: text,
  })
  .map(({ date, item: what, size, why, note }) => ({ date, item: what, change: size * whys[why], why, note }));

const supplier =
  (decimals: number) =>
  (id: string): fc.Arbitrary<Supplier> =>
    fc.record({
      id: fc.constant(id),
      name,
      shipping: sum(decimals),
      freeFrom: orNull(sum(decimals)),
      days: fc.integer({ min: 0, max: 60 }),
      offers: byId(
        (offer) =>
          fc.record({
            id: fc.constant(offer),
            contains: fc.oneof(
              fc.record({ kind: fc.constant("item" as const), item, count: packet }),
              fc.record({ kind: fc.constant("kit" as const), kit: idText }),
            ),
            price: sum(decimals),
            available: orNull(count),
          }),
        4,
      ),
    });

const decision: fc.Arbitrary<Decision> = fc.oneof(
  fc.record({ kind: fc.constant("substitute" as const), lesson: idText, part: idText, item, date: day }),
  fc.record({ kind: fc.constant("supply" as const), lesson: idText, item, date: day }),
  fc.record({ kind: fc.constant("skip" as const), lesson: idText, class: idText, date: day }),
);

const prepared = fc
  .array(fc.record({ sitting: fc.tuple(idText, idText, day).map((parts) => parts.join("/")), what: name }), { maxLength: 3 })
  .map((list) => (list.length > 0 ? { prepared: list } : {}));

/** Currencies with no, two and three decimals (ISO 4217). */
const currency = fc.constantFrom(
  { currency: "JPY", decimals: 0 },
  { currency: "EUR", decimals: 2 },
  { currency: "KES", decimals: 2 },
  { currency: "TND", decimals: 3 },
);

const chance = fc.oneof(
  fc.integer({ min: 1, max: 99 }).map((n) => n / 100),
  fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true }),
);

/** A class file that is right. It has kits, so that without their contents no movement can take too much. */
export const anyClassFile: fc.Arbitrary<ClassFile> = fc.tuple(currency, prepared).chain(([{ currency: code, decimals }, ticks]) =>
  fc
    .record({
      format: fc.constant("benchday-class/1" as const),
      about: text,
      lessonFolder: orNull(name),
      kitFolder: orNull(name),
      language: fc.constantFrom("en", "fr", "ar", "pt-BR"),
      currency: fc.constant(code),
      decimals: fc.constant(decimals),
      chance,
      budget: orNull(sum(decimals)),
      room: fc.record({ name: text, sockets: count, lux: orNull(fc.integer({ min: 0, max: 200_000 })) }),
      classes: fc
        .uniqueArray(idText, { minLength: 1, maxLength: 3 })
        .chain((ids) => fc.tuple(...ids.map(group)) as fc.Arbitrary<ClassGroup[]>),
      kits: fc.uniqueArray(idText, { minLength: 1, maxLength: 3 }).map((ids) => ids.map((kit, i) => ({ kit, count: i * 3 }))),
      stock: fc.array(fc.record({ item, count, box: text }), { maxLength: 5 }),
      movements: fc.array(movement, { maxLength: 5 }),
      suppliers: byId(supplier(decimals), 3),
      computers: byId(
        (id) =>
          fc.record({
            id: fc.constant(id),
            works: fc.boolean(),
            batteryMinutes: orNull(count),
            usbMilliamps: fc.constantFrom(500, 900),
            usbPorts: fc.integer({ min: 1, max: 4 }),
            note: text,
          }),
        3,
      ),
      boards: byId(
        (id) =>
          fc.record({
            id: fc.constant(id),
            works: fc.boolean(),
            deadPins: fc.subarray(["D5", "D13", "A0"]),
            note: text,
          }),
        3,
      ),
      cables: byId((id) => fc.record({ id: fc.constant(id), works: fc.boolean(), deadPins: fc.constant([]), note: text }), 3),
      supplies: fc.array(fc.record({ item: supplyItem, count, box: text }), { maxLength: 3 }),
      powerCuts: fc.array(
        fc
          .tuple(day, fc.uniqueArray(minute, { minLength: 2, maxLength: 2 }))
          .map(([date, [a = 0, b = 1]]) => ({ date, from: Math.min(a, b), to: Math.max(a, b) })),
        { maxLength: 2 },
      ),
      decisions: fc.array(decision, { maxLength: 3 }),
      counts: fc.array(
        fc
          .record({ date: day, class: idText, lesson: idText, item, back: count, broken: fc.nat(9), lost: fc.nat(9) })
          .map(({ lost, ...rest }) => ({
            ...rest,
            back: Math.min(rest.back, 900_000),
            out: Math.min(rest.back, 900_000) + rest.broken + lost,
          })),
        { maxLength: 3 },
      ),
      log: fc.array(fc.record({ date: day, class: idText, lesson: idText, team: orNull(packet), what: name, note: text }), {
        maxLength: 3,
      }),
    })
    .map((classFile) => ({ ...classFile, ...ticks })),
);
