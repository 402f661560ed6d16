// The verdict of one lesson of one class on its day, with every reason, what helps, and the trays.
//
// The verdict is the worst that any reason gives; the other reasons follow, also those that are only worth knowing.
// Does not know: words; how rehearsal, teams, stock and equipment come to their figures.
import { addDays, type Day } from "../../base/index.ts";
import { type ReadinessWord, worstVerdict } from "../../bench/rehearsal/index.ts";
import type { DayTeams } from "../classroom/index.ts";
import type { EquipmentReport } from "../equipment/index.ts";
import type { ClassFile, ClassGroup, ItemKey, Kit, LessonDate, Offer } from "../file/index.ts";
import type { Coverage, Cupboard, SittingStock } from "../stock/index.ts";
import type { SupplyChoice } from "./chooseSupply.ts";
import type { PlannedLesson, Reason, Remedy, Tray } from "./plan.ts";
import type { RehearsedLesson } from "./planClass.ts";
import { makeTrays } from "./trays.ts";

/** One lesson of one class on its day, before it is judged. */
export interface Place {
  readonly id: string;
  readonly group: ClassGroup;
  readonly at: LessonDate;
  readonly day: DayTeams;
}

export interface Evidence {
  readonly place: Place;
  readonly classFile: ClassFile;
  readonly kits: ReadonlyMap<string, Kit>;
  /** Null where the lesson could not be read. */
  readonly known: RehearsedLesson | null;
  readonly choice: SupplyChoice | null;
  readonly stock: SittingStock;
  readonly store: Cupboard;
  readonly equipment: EquipmentReport;
}

/** What is counted one by one; a shortage of it is mended or borrowed rather than bought in packets. */
const devices = new Set(["board", "usb-cable", "computer"]);

interface Findings {
  readonly reasons: Reason[];
  readonly remedies: Remedy[];
}

export function judgeSitting(evidence: Evidence): PlannedLesson {
  const { place, classFile, known, choice, stock, store } = evidence;
  const found: Findings = { reasons: [], remedies: [] };
  const trays = makeTrays(
    stock,
    place.day.teams.map((t) => t.number),
    store,
  );
  if (known === null || choice === null) {
    add(found, "not rehearsed yet", "lesson-unreadable", { lesson: place.at.lesson });
    found.remedies.push({ code: "mend-lesson", data: { lesson: place.at.lesson }, by: place.at.date });
  } else {
    judgeRehearsal(known, found);
    judgeSupply(evidence, choice, found);
    judgeTrays(known, trays, found);
  }
  // With nobody on the list nothing is missing either, which would read as "ready".
  if (place.group.pupils.length === 0) add(found, "not rehearsed yet", "no-pupils", { class: place.group.id });
  const short = judgeStock(evidence, found);
  judgeSharing(evidence, found);
  judgeEquipment(evidence, found);
  judgeEarlier(evidence, found);
  const verdict = worstVerdict(found.reasons.map((r) => r.verdict));
  if (verdict === "ready" && stock.chance < classFile.chance) judgeChance(evidence, found);
  const order = (r: Reason) => (worstVerdict([r.verdict]) === verdict && verdict !== "ready" ? 0 : r.verdict === "ready" ? 2 : 1);
  return {
    id: place.id,
    class: place.group.id,
    lesson: place.at.lesson,
    date: place.at.date,
    start: place.at.start,
    verdict,
    reasons: [...found.reasons].sort((a, b) => order(a) - order(b)),
    remedies: found.remedies,
    chance: stock.chance,
    short,
    teams: place.day.teams,
    moved: place.day.moved,
    trays,
    stock,
    rehearsal: known?.rehearsal ?? null,
    supply: choice?.supply ?? null,
  };
}

function add(found: Findings, verdict: ReadinessWord, code: Reason["code"], data: Reason["data"]): void {
  found.reasons.push({ verdict, code, data });
}

/** The circuit and program as the author wrote them, on the supply that the teams use. */
function judgeRehearsal({ lesson, rehearsal, proven }: RehearsedLesson, found: Findings): void {
  const once = proven.asWritten;
  for (const h of once.hazards) {
    const data = { hazard: h.code, part: h.part, value: h.value, limit: h.limit, unit: h.unit };
    if (h.severity === "unsafe") add(found, "unsafe", "hazard", data);
    else add(found, "ready", "caution", data);
  }
  const failed = once.checks.filter((c) => !c.passed && !c.undetermined);
  const open = once.checks.filter((c) => c.undetermined);
  if (failed.length > 0) {
    add(found, "fails its rehearsal", "checks-fail", { count: failed.length, line: failed[0]!.line, seen: failed[0]!.seen });
    found.remedies.push({ code: "mend-lesson", data: { lesson: lesson.id }, by: null });
  }
  if (open.length > 0)
    add(found, "fails its rehearsal", "checks-undetermined", {
      count: open.length,
      nets: [...new Set(open.flatMap((c) => c.hangsOn))],
    });
  if (once.verdict === "not rehearsed yet") {
    const part = rehearsal.problems.find((p) => "part" in p)?.part;
    add(found, "not rehearsed yet", "not-modelled", { part: typeof part === "string" ? part : lesson.id });
  }
}

function judgeSupply(evidence: Evidence, choice: SupplyChoice, found: Findings): void {
  const { place, stock, equipment } = evidence;
  if (choice.supply === null) {
    const teams = place.day.teams.length;
    const short = stock.coverage.find((c) => c.need.for[0] === "supply")?.short ?? teams;
    // A class with fewer teams than another may have enough where the other has not.
    if (short === 0) add(found, "ready", "other-supply-used", { supplies: choice.others });
    else
      add(found, "needs another supply", "no-supply-fits", {
        supply: choice.usual,
        why: choice.why,
        count: teams - short,
        teams,
      });
    const best = choice.helps[0];
    if (best !== undefined)
      found.remedies.push({
        code: "get-supply",
        data: { supply: best, count: short },
        by: lastOrderDay(evidence, best),
      });
    // What hangs on a socket does not help while mains are off; another day does.
    if (equipment.battery !== null) moveAwayFromCut(place, found);
  } else if (choice.supply !== choice.usual) {
    const used = stock.coverage.find((c) => c.need.for[0] === "supply")?.have.map((h) => h.item) ?? [choice.supply];
    add(found, "ready", "other-supply-used", { supplies: used });
  }
}

/** What stands in for what, and whether all that a team is handed passes together. */
function judgeTrays(known: RehearsedLesson, trays: readonly Tray[], found: Findings): void {
  const used = new Map<string, { part: string; item: ItemKey; insteadOf: ItemKey; teams: number[] }>();
  const combinations = new Map<string, { items: Map<string, ItemKey>; teams: number[] }>();
  for (const tray of trays) {
    const items = new Map<string, ItemKey>();
    for (const { item, parts, insteadOf } of tray.items) {
      if (insteadOf === null) continue;
      for (const part of parts) items.set(part, item);
      const key = `${parts.join(" ")} ${item}`;
      const entry = used.get(key) ?? { part: parts.join(", "), item, insteadOf, teams: [] };
      entry.teams.push(tray.team);
      used.set(key, entry);
    }
    if (items.size === 0) continue;
    const key = JSON.stringify([...items].sort());
    const entry = combinations.get(key) ?? { items, teams: [] };
    entry.teams.push(tray.team);
    combinations.set(key, entry);
  }
  for (const { part, item, insteadOf, teams } of used.values())
    add(found, "ready", "substitute-used", { part, item, insteadOf, count: teams.length, teams });
  for (const { items, teams } of combinations.values()) {
    const { verdict } = known.proven.withItems(items);
    if (verdict !== "ready" && known.proven.asWritten.verdict === "ready")
      add(found, verdict, "combination-fails", {
        items: [...items].map(([p, i]) => `${p}: ${i}`).join(", "),
        teams: teams.join(", "),
      });
  }
}

/** What the cupboard does not hold on the day. @returns it as a list. */
function judgeStock(evidence: Evidence, found: Findings): PlannedLesson["short"] {
  const { place, stock, choice } = evidence;
  const short = stock.coverage.filter((c) => c.short > 0 && !isOpenSupply(c, choice));
  for (const c of short) {
    const data = { item: c.need.item, count: c.short, wanted: c.wanted };
    if (devices.has(c.need.item)) {
      add(found, "short of parts", "device-short", { device: c.need.item, count: c.short, wanted: c.wanted });
      found.remedies.push({
        code: "mend-or-borrow",
        data: { device: c.need.item, count: c.short },
        by: addDays(place.at.date, -1),
      });
    } else {
      add(found, "short of parts", "part-short", data);
      // A port comes with a computer; nobody orders one.
      if (!c.need.item.startsWith("usb-port"))
        found.remedies.push({
          code: "order",
          data: { item: c.need.item, count: c.short },
          by: lastOrderDay(evidence, c.need.item),
        });
    }
  }
  return short.map((c) => ({ part: c.need.item, count: c.short }));
}

/** The need for a supply that nobody has is told as "needs another supply", once. */
function isOpenSupply(c: Coverage, choice: SupplyChoice | null): boolean {
  return c.need.for[0] === "supply" && choice?.supply === null;
}

/** The last day on which an order still comes in time: the day before the lesson less the days of the fastest supplier. */
function lastOrderDay({ classFile, kits, place }: Evidence, item: ItemKey): Day | null {
  const brings = (o: Offer) =>
    o.contains.kind === "item" ? o.contains.item === item : kits.get(o.contains.kit)?.contents.has(item) === true;
  const days = classFile.suppliers.filter((s) => s.offers.some(brings)).map((s) => s.days);
  return days.length === 0 ? null : addDays(place.at.date, -1 - Math.min(...days));
}

/** Computers that do not go round: two teams share one, as long as each has a port for two. */
function judgeSharing({ equipment }: Evidence, found: Findings): void {
  const { computers, sharing } = equipment;
  if (computers.short === 0 || found.reasons.some((r) => r.code === "device-short" && r.data.device === "computer")) return;
  if (sharing.unserved > 0) {
    add(found, "short of parts", "device-short", { device: "computer", count: sharing.unserved, wanted: computers.wanted });
    found.remedies.push({ code: "mend-or-borrow", data: { device: "computer", count: sharing.unserved }, by: null });
  } else {
    add(found, "ready", "computers-shared", { count: computers.have, teams: computers.wanted });
    found.remedies.push({ code: "share-computers", data: { count: computers.short }, by: null });
  }
}

/** A power cut that is known beforehand: the machines last, or teams share those that do, or some team sits in the dark. */
function judgeEquipment({ equipment, place }: Evidence, found: Findings): void {
  const { battery } = equipment;
  if (battery === null) return;
  const data = {
    minutes: battery.minutes,
    fromClock: battery.from,
    toClock: battery.to,
    count: battery.lasting,
    computers: battery.computers,
    tried: battery.computers - battery.untried.length,
    untried: battery.untried.length,
  };
  if (battery.unserved > 0) {
    add(found, "needs another supply", "battery-short", data);
    moveAwayFromCut(place, found);
  } else {
    add(found, "ready", battery.short > 0 ? "battery-shared" : "power-cut", data);
    if (battery.short > 0 && !found.remedies.some((r) => r.code === "share-computers"))
      found.remedies.push({ code: "share-computers", data: { count: battery.short }, by: null });
  }
}

function moveAwayFromCut({ at }: Place, found: Findings): void {
  if (found.remedies.some((r) => r.code === "move-away-from-cut")) return;
  found.remedies.push({ code: "move-away-from-cut", data: { date: at.date }, by: addDays(at.date, -1) });
}

function judgeEarlier({ place, known }: Evidence, found: Findings): void {
  for (const lesson of known?.lesson.needs ?? []) {
    if (place.group.lessons.some((l) => l.lesson === lesson && l.date < place.at.date)) continue;
    add(found, "ready", "earlier-lesson-missing", { lesson });
    found.remedies.push({ code: "hold-earlier-lesson", data: { lesson }, by: addDays(place.at.date, -1) });
  }
}

/** All teams have everything, but a failure or two would leave one without: the thinnest needs are named. */
function judgeChance(evidence: Evidence, found: Findings): void {
  const { classFile, stock } = evidence;
  add(found, "ready", "chance-low", { chance: stock.chance, wanted: classFile.chance });
  const thin = stock.coverage.filter((c) => c.chance < 1).sort((a, b) => a.chance - b.chance);
  for (const c of thin.slice(0, 2)) {
    const by = lastOrderDay(evidence, c.need.item);
    // A computer is not bought for a spare; what nobody sells cannot be.
    if (by !== null) found.remedies.push({ code: "order-spares", data: { item: c.need.item, chance: c.chance }, by });
  }
}
