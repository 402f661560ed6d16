// The shape of a class file as it stands in JSON: which fields there are, and what each may hold.
//
// Dates, times, sums and the chance are text here, as a person writes them. Only format, currency and classes must be there;
// everything else has a value that means "nothing said". The published JSON Schema is made from this.
// Does not know: which pupil, item or kit exists (judgeClassFile.ts), numbers inside the program (readClassFile.ts).
import * as v from "valibot";

/** Letters and digits of any script; no slash or comma, because ids are joined by them. */
const idPattern = /^[\p{L}\p{N}](?:[\p{L}\p{M}\p{N} ._+'-]*[\p{L}\p{M}\p{N}._+'-])?$/u;
const longestId = 60;
const id = v.pipe(v.string(), v.maxLength(longestId), v.regex(idPattern, "A-Z a-z 0-9 . _ - + '"));
/** No control characters but the line break and the tab: they have no look, and tables and papers break on them. */
const text = v.optional(v.pipe(v.string(), v.regex(/^[^\u0000-\u0008\u000b-\u001f\u007f-\u009f]*$/, "A-Z")), "");
/** The same with at least one character that can be seen. */
const name = v.pipe(v.string(), v.regex(/^(?=[\s\S]*\S)[^\u0000-\u0008\u000b-\u001f\u007f-\u009f]*$/, "A-Z"));
const item = v.pipe(v.string(), v.maxLength(200));
const yes = v.optional(v.boolean(), true);
const most = 1_000_000;
const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(most));
const atLeastOne = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(most));
const day = v.pipe(v.string(), v.regex(/^\d{4}-\d{2}-\d{2}$/, "YYYY-MM-DD"));
const time = v.pipe(v.string(), v.regex(/^(?:[01]\d|2[0-3]):[0-5]\d$/, "HH:MM"));
const sum = v.pipe(v.string(), v.regex(/^\d{1,9}(?:[.,]\d{1,4})?$/, '"3.40"'));
const orNull = <S extends v.GenericSchema>(schema: S) => v.optional(v.nullable(schema), null);
const list = <S extends v.GenericSchema>(schema: S, longest = 50_000) =>
  v.optional(v.pipe(v.array(schema), v.maxLength(longest)), []);
/** Lists of one class: far more than a school has, and few enough to compare each with each. */
const mostInClass = 2000;

/** A share as text, "95 %", or as a number, 0.95. No purchase can promise 100 %, and none is needed for 0 %. */
const chance = v.union([
  v.pipe(v.number(), v.gtValue(0), v.ltValue(1)),
  v.pipe(v.string(), v.regex(/^(?!0*(?:[.,]0*)?\s?%)\d{1,2}(?:[.,]\d{1,15})?\s?%$/, '"95 %"')),
]);

const pupil = v.strictObject({
  id,
  name,
  marks: v.optional(v.record(v.pipe(v.string(), v.minLength(1), v.maxLength(60)), v.pipe(v.number(), v.finite())), {}),
});

const lessonDate = v.strictObject({ lesson: id, date: day, start: time, absent: list(v.string(), mostInClass) });

const classGroup = v.strictObject({
  id,
  name: v.optional(name),
  teamSize: v.optional(v.pipe(v.number(), v.integer()), 3),
  balance: orNull(v.string()),
  pupils: v.pipe(v.array(pupil), v.maxLength(mostInClass)),
  apart: list(v.pipe(v.array(v.string()), v.length(2)), mostInClass),
  together: list(v.pipe(v.array(v.string()), v.minLength(2), v.maxLength(mostInClass)), mostInClass),
  lessons: list(lessonDate, mostInClass),
});

const movement = v.strictObject({
  date: day,
  item,
  change: v.pipe(v.number(), v.integer(), v.minValue(-most), v.maxValue(most)),
  why: v.picklist(["bought", "lost", "broken", "found", "lent", "returned", "corrected"]),
  note: text,
});

const offer = v.strictObject({
  id,
  item: v.optional(item),
  count: v.optional(atLeastOne),
  kit: v.optional(id),
  price: sum,
  available: orNull(count),
});

const supplier = v.strictObject({
  id,
  name: v.optional(name),
  shipping: v.optional(sum, "0"),
  freeFrom: orNull(sum),
  days: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(3650)), 0),
  offers: list(offer, mostInClass),
});

const computer = v.strictObject({
  id,
  works: yes,
  batteryMinutes: orNull(count),
  usbMilliamps: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(10_000)), 500),
  usbPorts: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(32)), 2),
  note: text,
});

/** Pins of the board, as printed on it. */
export const pinNames = [
  ...Array.from({ length: 14 }, (_, n) => `D${n}`),
  ...Array.from({ length: 6 }, (_, n) => `A${n}`),
] as const;

const board = v.strictObject({ id, works: yes, deadPins: list(v.picklist(pinNames)), note: text });
const cable = v.strictObject({ id, works: yes, note: text });
const supply = v.strictObject({ item, count, box: text });

const decision = v.variant("kind", [
  v.strictObject({ kind: v.literal("substitute"), lesson: id, part: id, item, date: day }),
  v.strictObject({ kind: v.literal("supply"), lesson: id, item, date: day }),
  v.strictObject({ kind: v.literal("skip"), lesson: id, class: id, date: day }),
]);

export const classFileShape = v.strictObject({
  format: v.literal("benchday-class/1"),
  about: text,
  language: v.optional(v.pipe(v.string(), v.regex(/^[a-z]{2,3}(?:-[A-Za-z0-9]{2,8}){0,4}$/, "en, pt-BR")), "en"),
  currency: v.string(),
  chance: v.optional(chance, "95 %"),
  budget: orNull(sum),
  lessonFolder: orNull(name),
  kitFolder: orNull(name),
  room: v.optional(
    v.strictObject({
      name: text,
      sockets: v.optional(count, 0),
      lux: orNull(v.pipe(v.number(), v.minValue(0), v.maxValue(200_000))),
    }),
    {},
  ),
  classes: v.pipe(v.array(classGroup), v.maxLength(100)),
  kits: list(v.strictObject({ kit: id, count })),
  stock: list(v.strictObject({ item, count, box: text })),
  movements: list(movement),
  suppliers: list(supplier),
  computers: list(computer),
  boards: list(board),
  cables: list(cable),
  supplies: list(supply),
  powerCuts: list(v.strictObject({ date: day, from: time, to: time })),
  decisions: list(decision),
  prepared: list(
    v.strictObject({
      sitting: v.pipe(v.string(), v.maxLength(200), v.regex(/^[^/]+\/[^/]+\/\d{4}-\d{2}-\d{2}$/, "class/lesson/YYYY-MM-DD")),
      what: v.pipe(name, v.maxLength(200)),
    }),
  ),
  counts: list(v.strictObject({ date: day, class: id, lesson: id, item, out: count, back: count, broken: v.optional(count, 0) })),
  log: list(v.strictObject({ date: day, class: id, lesson: id, team: orNull(atLeastOne), what: name, note: text })),
});

/** @returns whether a text may be an id. */
export function isId(written: string): boolean {
  return written.length <= longestId && idPattern.test(written);
}

/** A class file whose fields are right in themselves, its unsaid fields filled in. */
export type ClassFileShape = v.InferOutput<typeof classFileShape>;

/** A kit as it stands in YAML. */
export const kitShape = v.strictObject({
  format: v.literal("benchday-kit/1"),
  id,
  name,
  contents: v.record(v.pipe(v.string(), v.minLength(1), v.maxLength(200)), atLeastOne),
  supplier: v.optional(name),
  price: v.optional(v.pipe(v.string(), v.regex(/^\d{1,9}(?:[.,]\d{1,4})? [A-Z]{3}$/, "39.00 EUR"))),
  note: text,
});

export type KitShape = v.InferOutput<typeof kitShape>;
