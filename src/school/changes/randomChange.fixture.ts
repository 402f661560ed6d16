// Changes by chance for a class file: most of them fit, some are slips, some are nasty.
//
// Everything comes from one seeded random, so that a failure can be run again. Nothing here knows what a change should do.
// Does not know: what applyChange makes of them.
import { addDays, type Day, type Random } from "../../base/index.ts";
import type { ClassFile, Movement } from "../file/index.ts";
import type { Change, ChangeKind, SittingRef } from "./change.ts";
import { changeKinds } from "./changeShape.ts";

export const nastyTexts: readonly string[] = [
  "",
  "   ",
  "__proto__",
  "constructor",
  "prototype",
  "toString",
  "\u202eAwa",
  "Awa\u2069\u200f",
  "\u0000\u0007",
  "e\u0301",
  "\ud800",
  "=1+1",
  "<img src=x onerror=alert(1)>",
  "a\nb\tc\r\nd",
  "7b/lighthouse/2027-01-12",
  "x".repeat(10_001),
  "ليلى",
  "\u200b",
];
const names = ["Awa", "Bilal Haddad", "Chiara", "Đorđe", "José María", "Awa", "  Noor  ", "Zoë"];
const nastyNumbers: readonly number[] = [-1, 1.5, Number.NaN, Number.POSITIVE_INFINITY, 1e9, -0, 2 ** 53];
const items = ["led red", "led green", "resistor 220", "resistor 4.7k", "servo", "wire", "button", "usb-cable", "board"];
const supplies = ["battery-9v", "power-bank", "adapter 2000mA"];
const lessons = ["lighthouse", "signal-lamp", "quay-lamp-at-dusk", "barrier"];
const whys: readonly Movement["why"][] = ["bought", "lost", "broken", "found", "lent", "returned", "corrected"];

/** @returns a change of a kind taken by chance, or of the kind asked for. */
export function randomChange(classFile: ClassFile, random: Random, kindAsked?: ChangeKind): Change {
  const chance = (share: number) => random.next() < share;
  const pick = <T>(list: readonly T[]): T => list[random.int(0, list.length - 1)] as T;
  const text = () => (chance(0.15) ? pick(nastyTexts) : pick(names));
  const id = (list: readonly string[]) =>
    list.length > 0 && chance(0.9) ? pick(list) : chance(0.3) ? pick(nastyTexts) : `x${random.int(1, 40)}`;
  const count = (most = 20) => (chance(0.05) ? pick(nastyNumbers) : random.int(0, most));
  const day = (): Day =>
    (chance(0.03) ? pick(["2027-02-30", "", "0227-01-01"]) : addDays("2027-01-04" as Day, random.int(0, 90))) as Day;
  const minute = () => (chance(0.05) ? pick([-1, 1440, 9.5]) : 30 * random.int(14, 32));
  const item = () => (chance(0.04) ? "teapot" : pick(items));
  const group = classFile.classes[random.int(0, classFile.classes.length - 1)];
  const classId = () => id(classFile.classes.map((g) => g.id));
  const own = group?.id ?? "x";
  const pupilIds = group?.pupils.map((p) => p.id) ?? [];
  const pupil = () => id(pupilIds);
  const some = (least: number, most: number) => Array.from({ length: random.int(least, most) }, pupil);
  const sitting = (): SittingRef => {
    const meeting = group && group.lessons.length > 0 ? pick(group.lessons) : undefined;
    if (meeting && chance(0.9)) return { class: own, lesson: meeting.lesson, date: meeting.date };
    return { class: classId(), lesson: pick(lessons), date: day() };
  };
  const box = () => (chance(0.5) ? "" : chance(0.2) ? text() : `box ${random.int(1, 4)}`);
  const line = () => ({ item: item(), count: count(), box: box() });
  const movement = (): Movement => {
    const why = pick(whys);
    const size = chance(0.05) ? 0 : random.int(1, 4);
    const change = ["lost", "broken", "lent"].includes(why) === chance(0.9) ? -size : size;
    return { date: day(), item: item(), change, why, note: chance(0.3) ? text() : "" };
  };
  const device = (list: readonly { readonly id: string }[]) => id(list.map((d) => d.id));
  const kind = kindAsked ?? pick(changeKinds);
  const made = (): unknown => {
    switch (kind) {
      case "set-about":
        return { about: text() };
      case "restore-day":
      case "join-copy": {
        // A state from before, nothing, or what is no class at all.
        const file = pick([{ ...classFile, about: text(), stock: classFile.stock.filter(() => chance(0.8)) }, undefined, {}]);
        return { ...(kind === "restore-day" ? { date: day(), clock: minute() } : { name: text() }), ...(file && { file }) };
      }
      case "set-language":
        return { language: pick(["en", "fr", "pt-BR", "English", ""]) };
      case "set-currency":
        return pick([
          { currency: "JPY", decimals: 0 },
          { currency: "EUR", decimals: 2 },
          { currency: "TND", decimals: 3 },
          { currency: "KES", decimals: 2 },
          { currency: "EUR", decimals: 0 },
          { currency: "EURO", decimals: 2 },
        ]);
      case "set-chance":
        return { chance: pick([0.9, 0.95, 1 / 3, 0, 1, Number.NaN]) };
      case "set-budget":
        return { budget: chance(0.2) ? null : count(30_000) };
      case "set-room":
        return { room: { name: text(), sockets: count(), lux: chance(0.5) ? null : count(500) } };
      case "add-class":
        return { id: classId() + (chance(0.5) ? random.int(1, 9) : ""), name: text(), teamSize: random.int(1, 7) };
      case "rename-class":
        return { class: classId(), name: text() };
      case "remove-class":
        return { class: classId() };
      case "set-team-size":
        return { class: classId(), teamSize: random.int(1, 7) };
      case "set-balance":
        return { class: classId(), balance: pick([null, "reads", "runs", "__proto__"]) };
      case "take-roster": {
        const kept = (group?.pupils ?? []).filter(() => chance(0.9));
        const more = Array.from({ length: random.int(0, 3) }, (_, i) => ({
          id: chance(0.5) ? `p${String(i + 1).padStart(2, "0")}` : `n${random.int(1, 99)}`,
          name: text(),
          marks: chance(0.5) ? { [pick(["reads", "runs", "7"])]: random.int(1, 3) } : {},
        }));
        const list = random.shuffled([...kept, ...more]);
        return {
          class: own,
          pupils: chance(0.5) ? list.map((p, i) => ({ ...p, id: `p${String(i + 1).padStart(2, "0")}` })) : list,
        };
      }
      case "add-pupil":
        return { class: classId(), name: text() };
      case "rename-pupil":
        return { class: own, pupil: pupil(), name: text() };
      case "remove-pupil":
        return { class: own, pupil: pupil() };
      case "keep-apart":
        return { class: own, pupils: [pupil(), pupil()] };
      case "keep-together":
        return { class: own, pupils: some(1, 4) };
      case "drop-wish": {
        const wishes = [...(group?.apart ?? []), ...(group?.together ?? [])];
        return { class: own, pupils: wishes.length > 0 && chance(0.9) ? random.shuffled(pick(wishes)) : some(2, 3) };
      }
      case "add-lesson":
        return { sitting: { class: classId(), lesson: id(lessons), date: day() }, start: minute() };
      case "move-lesson":
        return { sitting: sitting(), date: day(), start: minute() };
      case "remove-lesson":
        return { sitting: sitting() };
      case "order-lessons": {
        const ids = (group?.lessons ?? []).map((m) => m.lesson);
        return { class: own, lessons: chance(0.9) ? random.shuffled(ids) : ids.slice(1) };
      }
      case "mark-absent":
        return { sitting: sitting(), pupils: some(0, 3) };
      case "mark-present": {
        const meeting = (group?.lessons ?? []).find(({ absent }) => absent.length > 0);
        if (!meeting || chance(0.2)) return { sitting: sitting(), pupils: some(0, 3) };
        return { sitting: { class: own, lesson: meeting.lesson, date: meeting.date }, pupils: [pick(meeting.absent)] };
      }
      case "decide":
      case "undecide": {
        const decision = pick([
          { kind: "substitute", lesson: pick(lessons), part: pick(["R1", "R2", "__proto__"]), item: item(), date: day() },
          { kind: "supply", lesson: pick(lessons), item: pick(supplies), date: day() },
          { kind: "skip", ...sitting() },
        ]);
        const there = classFile.decisions;
        return { decision: kind === "undecide" && there.length > 0 && chance(0.9) ? pick(there) : decision };
      }
      case "tick":
      case "untick": {
        const there = classFile.prepared ?? [];
        if (kind === "untick" && there.length > 0 && chance(0.9)) return { ...pick(there) };
        const at = sitting();
        return {
          sitting: `${at.class}/${at.lesson}/${at.date}`,
          what: chance(0.1) ? text() : pick(["charge 1", "set-out-trays"]),
        };
      }
      case "set-kit":
        return { kit: id(["harbour-basic", "harbour-plain"]), count: count(9) };
      case "set-stock":
        return { line: line() };
      case "remove-stock":
      case "remove-supply": {
        const there = kind === "remove-stock" ? classFile.stock : classFile.supplies;
        const { item: what, box: where } = there.length > 0 && chance(0.9) ? pick(there) : line();
        return { item: what, box: where };
      }
      case "take-stock":
        return { lines: Array.from({ length: random.int(0, 6) }, line), how: pick(["replace", "add", "update"]) };
      case "move-stock":
        return { movement: movement() };
      case "set-computer":
        return {
          computer: {
            id: device(classFile.computers),
            works: chance(0.7),
            batteryMinutes: chance(0.3) ? null : count(120),
            usbMilliamps: pick([500, 900, 0]),
            usbPorts: count(4),
            note: chance(0.3) ? text() : "",
          },
        };
      case "remove-computer":
        return { id: device(classFile.computers) };
      case "set-device": {
        const what = pick(["boards", "cables"] as const);
        const deadPins = chance(0.3) ? pick([["D5"], ["D5", "A0"], ["D99"]]) : [];
        return { what, device: { id: device(classFile[what]), works: chance(0.7), deadPins, note: chance(0.3) ? text() : "" } };
      }
      case "remove-device": {
        const what = pick(["boards", "cables"] as const);
        return { what, id: device(classFile[what]) };
      }
      case "count-devices":
        return { what: pick(["boards", "cables", "computers"]), count: count(14) };
      case "set-supply":
        return { line: { ...line(), item: chance(0.1) ? "servo" : pick(supplies) } };
      case "add-power-cut":
      case "remove-power-cut": {
        const there = classFile.powerCuts;
        return {
          cut:
            kind === "remove-power-cut" && there.length > 0 && chance(0.9)
              ? pick(there)
              : { date: day(), from: minute(), to: minute() },
        };
      }
      case "set-supplier":
        return {
          supplier: {
            id: device(classFile.suppliers),
            name: text(),
            shipping: count(900),
            freeFrom: chance(0.5) ? null : count(9000),
            days: count(30),
            offers: Array.from({ length: random.int(0, 3) }, (_, i) => ({
              id: `o${chance(0.05) ? 0 : i}`,
              contains: chance(0.8)
                ? { kind: "item", item: item(), count: random.int(1, 50) }
                : { kind: "kit", kit: id(["harbour-basic"]) },
              price: count(5000),
              available: chance(0.5) ? null : count(9),
            })),
          },
        };
      case "remove-supplier":
        return { id: device(classFile.suppliers) };
      case "order-came":
        return {
          movements: Array.from({ length: random.int(0, 3) }, () => ({ ...movement(), why: "bought", change: random.int(1, 9) })),
        };
      case "count-in":
        return {
          counts: Array.from({ length: random.int(0, 3) }, () => {
            const back = random.int(0, 9);
            return { ...sitting(), item: item(), out: back + random.int(-1, 2), back, broken: random.int(0, 1) };
          }),
        };
      case "log":
      case "take-back-log": {
        const there = classFile.log;
        const entry = { ...sitting(), team: chance(0.3) ? null : count(9), what: chance(0.1) ? text() : "led-turned", note: "" };
        return { entry: kind === "take-back-log" && there.length > 0 && chance(0.9) ? pick(there) : entry };
      }
    }
  };
  return { kind, ...(made() as object) } as Change;
}
