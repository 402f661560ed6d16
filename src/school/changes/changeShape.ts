// What each change may hold, checked before anything is done with it; texts leave it tidy.
//
// The message of each rule is the code of the problem, so that the rule and what is said about it stand on one line. Bounds are
// those of the class file, because what a change leaves behind must be readable.
// Does not know: which pupil, lesson or item there is in a class file.
import * as v from "valibot";
import { currencyDecimals, type Day, near, parseDay, plainText } from "../../base/index.ts";
import { catalogue } from "../../bench/parts/index.ts";
import { isId, nearItem, pinNames, readItem, teamSizes } from "../file/index.ts";
import type { Change, ChangeKind } from "./change.ts";
import type { ChangesProblem } from "./changesProblem.ts";

type Code = ChangesProblem["code"];

const longestText = 10_000;
/** Lists of one class and lists of the whole file, as the class file takes them. */
export const listLimits = { classes: 100, inClass: 2000, inFile: 50_000 } as const;
const most = 1_000_000;

/** Characters that only turn the direction of a text (Unicode, property Bidi_Control). */
const turning = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
const control = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/g;
/** Line breaks of any kind and tabs: a name stands on one line. */
const breaks = /[\t\n\r\u000b\u000c\u0085\u2028\u2029]+/g;
const seen = /[\p{L}\p{N}\p{P}\p{S}]/u;

/** @returns a name on one line, in one spelling, without what cannot be seen at its ends or turns it round. */
export function tidyName(text: string): string {
  return plainText(text.replace(breaks, " ").replace(turning, "").replace(control, "")).trim();
}

function tidyText(text: string): string {
  return plainText(text.replace(/\r\n?/g, "\n").replace(turning, "").replace(control, ""));
}

const bad = (code: Code): Code => code;
const string = (code: Code) => v.pipe(v.string(bad("changes.badChange")), v.maxLength(10 * longestText, code));
const name = v.pipe(
  string("changes.longText"),
  v.transform(tidyName),
  v.maxLength(longestText, bad("changes.longText")),
  v.regex(seen, bad("changes.emptyName")),
);
const shortName = v.pipe(name, v.maxLength(200, bad("changes.longText")));
const text = v.pipe(string("changes.longText"), v.transform(tidyText), v.maxLength(longestText, bad("changes.longText")));
const id = v.pipe(string("changes.badId"), v.transform(plainText), v.check(isId, bad("changes.badId")));
const whole = (least: number, greatest: number, code: Code) =>
  v.pipe(
    v.number(code),
    v.integer(code),
    v.minValue(least, code),
    v.maxValue(greatest, code),
    // Minus nought is nought.
    v.transform((n) => n + 0),
  );
const count = whole(0, most, "changes.badCount");
const atLeastOne = whole(1, most, "changes.badCount");
/** Upper bound of all currencies; `set-budget` and `set-supplier` look at the decimals. */
const sum = whole(0, Number.MAX_SAFE_INTEGER, "changes.badSum");
const minute = whole(0, 24 * 60 - 1, "changes.badTime");
const day = v.pipe(
  v.string(bad("changes.badDay")),
  // A year outside 2000 to 2199 is a slip, as in a class file.
  v.check((d) => /^2[01]/.test(d) && parseDay(d) !== null, bad("changes.badDay")),
  v.transform((d) => d as Day),
);
const item = v.pipe(
  v.string(bad("changes.unknownItem")),
  v.maxLength(200, bad("changes.unknownItem")),
  v.check((key) => readItem(plainText(key)) !== null, bad("changes.unknownItem")),
  v.transform((key) => readItem(plainText(key)) ?? key),
);
const supplyItem = v.pipe(
  item,
  v.check((key) => catalogue.get(key.split(" ")[0] ?? "")?.role === "supply", bad("changes.notASupply")),
);
const list = <S extends v.GenericSchema>(entry: S, longest: number = listLimits.inFile) =>
  v.pipe(v.array(entry, bad("changes.badChange")), v.maxLength(longest, bad("changes.tooMany")));
const yes = v.boolean(bad("changes.badChange"));
const orNull = <S extends v.GenericSchema>(entry: S) => v.nullable(entry);
const shape = <E extends v.ObjectEntries>(entries: E) => v.strictObject(entries, bad("changes.badChange"));

/** Names that objects have by themselves: as a field they would be lost or do harm. */
export const ofObjects: ReadonlySet<string> = new Set(["__proto__", "constructor", "prototype"]);
const marks = v.pipe(
  v.custom<Readonly<Record<string, number>>>(
    (input) =>
      typeof input === "object" &&
      input !== null &&
      !Array.isArray(input) &&
      Object.entries(input).every(([column, mark]) => {
        const plain = plainText(column);
        return plain.length >= 1 && plain.length <= 60 && !ofObjects.has(plain) && Number.isFinite(mark);
      }),
    bad("changes.badMark"),
  ),
  v.transform((input) => Object.fromEntries(Object.entries(input).map(([column, mark]) => [plainText(column), mark + 0]))),
);

const pupil = shape({ id, name, marks });
const sitting = shape({ class: id, lesson: id, date: day });
const stockLine = shape({ item, count, box: text });
const supplyLine = shape({ item: supplyItem, count, box: text });
const signs: Readonly<Record<string, number>> = { bought: 1, found: 1, returned: 1, lost: -1, broken: -1, lent: -1 };
const movement = v.pipe(
  shape({
    date: day,
    item,
    change: whole(-most, most, "changes.badCount"),
    why: v.picklist(["bought", "lost", "broken", "found", "lent", "returned", "corrected"], bad("changes.badChange")),
    note: text,
  }),
  v.check(({ change }) => change !== 0, bad("changes.noMovement")),
  v.check(({ change, why }) => (signs[why] ?? change) * change > 0, bad("changes.wrongSign")),
);
const computer = v.pipe(
  shape({
    id,
    works: yes,
    batteryMinutes: orNull(count),
    usbMilliamps: whole(1, 10_000, "changes.badCount"),
    usbPorts: whole(0, 32, "changes.badCount"),
    note: text,
  }),
  v.check(({ works, usbPorts }) => !works || usbPorts > 0, bad("changes.noPorts")),
);
const device = shape({ id, works: yes, deadPins: list(v.picklist(pinNames, bad("changes.badPin")), 100), note: text });
const offer = shape({
  id,
  contains: v.variant(
    "kind",
    [shape({ kind: v.literal("item"), item, count: atLeastOne }), shape({ kind: v.literal("kit"), kit: id })],
    bad("changes.badChange"),
  ),
  price: sum,
  available: orNull(count),
});
const supplier = shape({
  id,
  name,
  shipping: sum,
  freeFrom: orNull(sum),
  days: whole(0, 3650, "changes.badCount"),
  offers: list(offer, listLimits.inClass),
});
const powerCut = v.pipe(
  shape({ date: day, from: minute, to: minute }),
  v.check(({ from, to }) => from < to, bad("changes.timesBackwards")),
);
const countIn = v.pipe(
  shape({ date: day, class: id, lesson: id, item, out: count, back: count, broken: count }),
  v.check(({ out, back, broken }) => back + broken <= out, bad("changes.moreBackThanOut")),
);
const decision = v.variant(
  "kind",
  [
    shape({ kind: v.literal("substitute"), lesson: id, part: id, item, date: day }),
    shape({ kind: v.literal("supply"), lesson: id, item, date: day }),
    shape({ kind: v.literal("skip"), lesson: id, class: id, date: day }),
  ],
  bad("changes.badChange"),
);
const logEntry = shape({ date: day, class: id, lesson: id, team: orNull(atLeastOne), what: name, note: text });
const teamSize = whole(teamSizes.least, teamSizes.most, "changes.badTeamSize");
const pupilIds = list(id, listLimits.inClass);
const what = v.picklist(["boards", "cables"], bad("changes.badChange"));

/** It was read before it came here; in an undo list it is left out. */
const wholeFile = v.optional(v.looseObject({}, bad("changes.badChange")));

/** The fields of each kind; a kind that is missing here does not compile. */
const fields = {
  "set-about": { about: text },
  "set-language": {
    language: v.pipe(
      v.string(bad("changes.badLanguage")),
      v.regex(/^[a-z]{2,3}(?:-[A-Za-z0-9]{2,8}){0,4}$/, bad("changes.badLanguage")),
    ),
  },
  "set-currency": {
    currency: v.pipe(
      v.string(bad("changes.badCurrency")),
      v.check((c) => Intl.supportedValuesOf("currency").includes(c), bad("changes.badCurrency")),
    ),
    decimals: whole(0, 4, "changes.badCount"),
  },
  "set-chance": {
    // A chance nearer to nought or one than a thousand-millionth cannot be counted with.
    chance: v.pipe(
      v.number(bad("changes.badChance")),
      v.minValue(1e-9, bad("changes.badChance")),
      v.maxValue(1 - 1e-9, bad("changes.badChance")),
    ),
  },
  "set-budget": { budget: orNull(sum) },
  "set-room": {
    room: shape({
      name: text,
      sockets: count,
      lux: orNull(
        v.pipe(
          v.number(bad("changes.badNumber")),
          v.minValue(0, bad("changes.badNumber")),
          v.maxValue(200_000, bad("changes.badNumber")),
          v.transform((n) => n + 0),
        ),
      ),
    }),
  },
  "restore-day": { date: day, clock: minute, file: wholeFile },
  "join-copy": { name: shortName, file: wholeFile },
  "add-class": { id, name, teamSize },
  "rename-class": { class: id, name },
  "remove-class": { class: id },
  "set-team-size": { class: id, teamSize },
  "set-balance": {
    class: id,
    balance: orNull(v.pipe(v.string(bad("changes.badMark")), v.maxLength(200, bad("changes.badMark")))),
  },
  "take-roster": { class: id, pupils: list(pupil, listLimits.inClass) },
  "add-pupil": { class: id, name },
  "rename-pupil": { class: id, pupil: id, name },
  "remove-pupil": { class: id, pupil: id },
  "keep-apart": { class: id, pupils: v.strictTuple([id, id], bad("changes.badChange")) },
  "keep-together": { class: id, pupils: v.pipe(pupilIds, v.minLength(2, bad("changes.badChange"))) },
  "drop-wish": { class: id, pupils: pupilIds },
  "add-lesson": { sitting, start: minute },
  "move-lesson": { sitting, date: day, start: minute },
  "remove-lesson": { sitting },
  "order-lessons": { class: id, lessons: list(id, listLimits.inClass) },
  "mark-absent": { sitting, pupils: pupilIds },
  "mark-present": { sitting, pupils: pupilIds },
  decide: { decision },
  undecide: { decision },
  tick: { sitting: string("changes.badId"), what: shortName },
  untick: { sitting: string("changes.badId"), what: shortName },
  "set-kit": { kit: id, count },
  "set-stock": { line: stockLine },
  "remove-stock": { item, box: text },
  "take-stock": { lines: list(stockLine), how: v.picklist(["replace", "add", "update"], bad("changes.badChange")) },
  "move-stock": { movement },
  "set-computer": { computer },
  "remove-computer": { id },
  "set-device": { what, device },
  "remove-device": { what, id },
  "count-devices": {
    what: v.picklist(["boards", "cables", "computers"], bad("changes.badChange")),
    // More than a school has; every one of them stands in the file by itself.
    count: whole(0, 1000, "changes.badCount"),
  },
  "set-supply": { line: supplyLine },
  "remove-supply": { item, box: text },
  "add-power-cut": { cut: powerCut },
  "remove-power-cut": { cut: powerCut },
  "set-supplier": { supplier },
  "remove-supplier": { id },
  "order-came": { movements: list(movement) },
  "count-in": { counts: list(countIn) },
  log: { entry: logEntry },
  "take-back-log": { entry: logEntry },
} satisfies {
  readonly [Kind in ChangeKind]: { readonly [Field in Exclude<keyof Extract<Change, { kind: Kind }>, "kind">]: v.GenericSchema };
};

/** Every kind, in the order of change.ts. */
export const changeKinds = Object.keys(fields) as readonly ChangeKind[];

const shapes = new Map<string, v.GenericSchema>(
  Object.entries(fields).map(([kind, entries]) => [kind, shape({ kind: v.literal(kind), ...entries })]),
);

/**
 * @param input anything: a change of the page, or what an undo list holds.
 * @returns the change with tidy texts and items by their one key, or why it cannot be one. Never throws.
 */
export function readChange(input: unknown): { readonly value: Change } | { readonly problem: ChangesProblem } {
  const kind = typeof input === "object" && input !== null && "kind" in input ? input.kind : undefined;
  const schema = typeof kind === "string" ? shapes.get(kind) : undefined;
  if (!schema) return { problem: { code: "changes.badChange", found: shown(kind) } };
  const read = v.safeParse(schema, input, { abortEarly: true });
  if (read.success) return { value: read.output as Change };
  const [issue] = read.issues;
  return { problem: problemOf(issue, v.getDotPath(issue) ?? "") };
}

/** The data of a problem, from the value that broke a rule. */
function problemOf({ message, input, requirement }: v.BaseIssue<unknown>, path: string): ChangesProblem {
  const code = message as Code;
  const found = shown(input);
  const held = (typeof input === "object" && input !== null ? input : {}) as Readonly<Record<string, never>>;
  switch (code) {
    case "changes.emptyName":
      return { code };
    case "changes.longText":
      return { code, most: longestText };
    case "changes.tooMany":
      return { code, most: Number(requirement) };
    case "changes.badTeamSize":
      return { code, found, ...teamSizes };
    case "changes.unknownItem":
      return { code, found, near: typeof input === "string" ? nearItem(input.slice(0, 200)) : null };
    case "changes.badCurrency":
      return { code, found, near: near(found.toUpperCase(), Intl.supportedValuesOf("currency")) };
    case "changes.notASupply":
      return { code, item: found };
    case "changes.noMovement":
      return { code, item: held.item ?? "" };
    case "changes.wrongSign":
      return { code, item: held.item ?? "", why: held.why ?? "", expected: (signs[held.why ?? ""] ?? 1) > 0 ? "+" : "-" };
    case "changes.noPorts":
      return { code, computer: held.id ?? "" };
    case "changes.timesBackwards":
      return { code, fromClock: held.from ?? 0, toClock: held.to ?? 0 };
    case "changes.moreBackThanOut":
      return { code, item: held.item ?? "", out: held.out ?? 0, back: held.back ?? 0, broken: held.broken ?? 0 };
    case "changes.badId":
    case "changes.badCount":
    case "changes.badNumber":
    case "changes.badChance":
    case "changes.badSum":
    case "changes.badDay":
    case "changes.badTime":
    case "changes.badMark":
    case "changes.badPin":
    case "changes.badLanguage":
      return { code, found };
    default:
      return { code: "changes.badChange", found: path || found };
  }
}

function shown(input: unknown): string {
  if (typeof input === "string") return tidyName(input.slice(0, 60));
  return typeof input === "object" && input !== null ? "{…}" : String(input).slice(0, 60);
}

/** @returns the decimals of a currency that was checked. */
export function decimalsOf(currency: string): number {
  return currencyDecimals(currency) ?? 2;
}
