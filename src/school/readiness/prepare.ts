// What to do before the lessons, in the order of the days on which it must be done at the latest.
//
// Does not know: words; what is short is told by the plan.
import { addDays, type Day } from "../../base/index.ts";
import type { ChargingPlan } from "../equipment/index.ts";
import type { ClassFile } from "../file/index.ts";
import type { PlannedLesson, Preparation, PreparationCode } from "./plan.ts";
import type { RehearsedLesson } from "./planClass.ts";

/** Days before a lesson by which things should be done (common practice, no source). A week leaves time to ask somebody. */
const daysBefore = {
  "try-it-yourself": 7,
  "check-devices": 2,
  charge: 1,
  "print-papers": 1,
  "set-out-trays": 1,
  "read-cautions": 1,
} as const;

/** The order of things that fall on one day. */
const rank: readonly PreparationCode[] = [
  "order-by",
  "try-it-yourself",
  "check-devices",
  "read-cautions",
  "print-papers",
  "charge",
  "set-out-trays",
  "tell-substitutes",
];

/** Sheets that a lesson needs besides one tray list a team: the run sheet. */
const teacherSheets = 1;

/** @param charging for each lesson by id: what must be charged, when and where. */
export function prepare(
  lessons: readonly PlannedLesson[],
  classFile: ClassFile,
  rehearsed: ReadonlyMap<string, RehearsedLesson>,
  charging: ReadonlyMap<string, ChargingPlan>,
  today: Day,
): Preparation[] {
  const list: Preparation[] = [];
  const tried = new Set<string>();
  for (const lesson of lessons) {
    const put = (code: PreparationCode, date: Day, data: Preparation["data"]) =>
      list.push({ sitting: lesson.id, code, date: date < today ? today : date, data });
    const before = (code: keyof typeof daysBefore, data: Preparation["data"]) =>
      put(code, addDays(lesson.date, -daysBefore[code]), data);
    for (const remedy of lesson.remedies)
      if ((remedy.code === "order" || remedy.code === "get-supply") && remedy.by !== null)
        put("order-by", remedy.by, { item: String(remedy.data.item ?? remedy.data.supply), count: Number(remedy.data.count) });
    if (!tried.has(lesson.lesson)) {
      tried.add(lesson.lesson);
      before("try-it-yourself", { lesson: lesson.lesson });
      const known = rehearsed.get(lesson.lesson)?.lesson;
      if (known?.texts.get(classFile.language)?.sections.get("cautions") ?? known?.texts.get("en")?.sections.get("cautions"))
        before("read-cautions", { lesson: lesson.lesson });
    }
    before("check-devices", { count: lesson.teams.length });
    before("print-papers", { count: lesson.trays.length + teacherSheets });
    const charge = charging.get(lesson.id);
    // Charging starts on the day of the first plug, which may be days before where sockets are few.
    if (charge && charge.count > 0) put("charge", charge.charges[0]!.date, { count: charge.count, minutes: charge.minutes });
    before("set-out-trays", { count: lesson.trays.length });
    for (const reason of lesson.reasons) if (reason.code === "substitute-used") put("tell-substitutes", lesson.date, reason.data);
  }
  return list.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : rank.indexOf(a.code) - rank.indexOf(b.code)));
}
