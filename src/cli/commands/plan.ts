// benchday plan CLASS: each lesson on its day, its verdict and why, what helps, and what to prepare.
//
// Does not know: how a verdict is found.
import type { Day } from "../../base/index.ts";
import { countedItem, formatChance, formatClock, formatDay, type Language, sayUnchecked } from "../../language/index.ts";
import type { ClassFile } from "../../school/file/index.ts";
import type { Plan, PlannedLesson } from "../../school/readiness/index.ts";
import type { SchoolFiles } from "../loadFiles.ts";
import { bold, columns, type ExitStatus, print, printJson, problemsAsJson, type Talk, wrap } from "../output.ts";
import { isPlanned, planSchool, statusOf } from "../planSchool.ts";

export function planCommand(
  path: string,
  options: { readonly today: Day; readonly seed: number; readonly trays: boolean },
  talk: Talk,
): ExitStatus {
  const planned = planSchool(path, options.today, options.seed, talk);
  if (!isPlanned(planned)) {
    if (talk.json) printJson({ lessons: [], teams: [], prepare: [], problems: problemsAsJson(planned) });
    return 1;
  }
  if (talk.json) printJson({ ...planAsJson(planned.plan), problems: problemsAsJson(planned.problems) });
  else {
    printPlan(planned.plan, planned.files, talk.language);
    if (options.trays) printTrays(planned.plan, planned.files, talk.language);
  }
  return statusOf(planned);
}

/** The plan as design section 9 has it, with reasons and remedies added. Team numbers are the places in the list, from 1. */
export function planAsJson(plan: Plan): object {
  return {
    lessons: plan.lessons.map((l) => ({
      id: l.id,
      class: l.class,
      lesson: l.lesson,
      date: l.date,
      start: l.start,
      verdict: l.verdict,
      chance: l.chance,
      short: l.short,
      supply: l.supply,
      reasons: l.reasons,
      remedies: l.remedies,
      trays: l.trays,
      needs: l.stock.coverage.map((c) => ({
        for: c.need.for,
        item: c.need.item,
        wanted: c.wanted,
        have: c.have,
        short: c.short,
        works: c.works,
        chance: c.chance,
      })),
    })),
    teams: plan.lessons.map((l) => ({
      class: l.class,
      lesson: l.lesson,
      date: l.date,
      teams: l.teams.map((t) => t.pupils),
      roles: l.teams.map((t) => t.roles),
      moved: l.moved,
    })),
    prepare: plan.prepare,
    rotas: plan.rotas.map(({ class: id, rota }) => ({
      class: id,
      bound: rota.bound,
      fresh: rota.fresh,
      repeated: rota.repeated,
    })),
  };
}

export function printPlan(plan: Plan, files: SchoolFiles, language: Language): void {
  const say = (key: string, data: Record<string, unknown> = {}) => sayUnchecked(language, `plan.${key}`, data);
  const title = (id: string) =>
    files.lessons.get(id)?.texts.get(language.tag)?.title ?? files.lessons.get(id)?.texts.get("en")?.title ?? id;
  print(bold(say("heading", { count: plan.lessons.length, chance: formatChance(language, files.classFile.chance) })));
  if (plan.lessons.length === 0) print(say("nothing"));
  for (const lesson of plan.lessons) {
    print();
    print(
      `${bold(formatDay(language, lesson.date, "weekday"))}, ${formatClock(language, lesson.start)}  ${className(files.classFile, lesson.class)}  ${title(lesson.lesson)}: ${bold(sayUnchecked(language, `verdict.${lesson.verdict}`))}`,
    );
    for (const line of lessonLines(lesson, language, title)) print(wrap(line, "    "));
  }
  if (plan.prepare.length > 0) {
    print();
    print(bold(say("prepare")));
    print(
      columns(
        plan.prepare.map((p) => {
          const lesson = plan.lessons.find((l) => l.id === p.sitting);
          return [
            `  ${formatDay(language, p.date, "short")}`,
            lesson ? `${lesson.class}, ${title(lesson.lesson)}` : "",
            sayUnchecked(language, `preparation.${p.code}`, named(p.data, title)),
          ];
        }),
      ),
    );
  }
  print();
  print(bold(say("teams")));
  for (const { class: id, rota } of plan.rotas)
    print(
      wrap(
        say("rota", {
          class: className(files.classFile, id),
          lessons: rota.lessons.length,
          fresh: rota.fresh,
          bound: rota.bound,
          repeated: rota.repeated,
        }),
        "  ",
      ),
    );
}

function lessonLines(lesson: PlannedLesson, language: Language, title: (id: string) => string): string[] {
  return [
    ...lesson.reasons.map((r) => sayUnchecked(language, `reason.${r.code}`, named(r.data, title))),
    // Where something is missing no team count helps; where the chance is too low a reason has told it.
    ...(lesson.chance === 0 || lesson.reasons.some((r) => r.code === "chance-low")
      ? []
      : [sayUnchecked(language, "plan.chance", { chance: formatChance(language, lesson.chance), count: lesson.teams.length })]),
    ...lesson.remedies.map((r) =>
      r.by === null
        ? sayUnchecked(language, `remedy.${r.code}`, named(r.data, title))
        : sayUnchecked(language, "plan.remedyBy", {
            remedy: sayUnchecked(language, `remedy.${r.code}`, named(r.data, title)),
            date: r.by,
          }),
    ),
  ];
}

/** The trays of the first lesson of each class that has not been held yet, as text; the papers have all of them. */
function printTrays(plan: Plan, files: SchoolFiles, language: Language): void {
  const first = plan.rotas.flatMap(({ class: id }) => plan.lessons.find((l) => l.class === id) ?? []);
  const say = (key: string, data: Record<string, unknown> = {}) => sayUnchecked(language, `plan.${key}`, data);
  for (const lesson of first) {
    print();
    print(bold(say("trays", { class: className(files.classFile, lesson.class), lesson: lesson.lesson, date: lesson.date })));
    // Teams with the same things stand on one line.
    const alike = new Map<string, number[]>();
    for (const tray of lesson.trays) {
      const things = [
        ...tray.items.map((i) => countedItem(language, i.item, i.count)),
        ...tray.missing.map((m) => say("missing", { item: countedItem(language, m.item, m.count) })),
      ].join("; ");
      alike.set(things, [...(alike.get(things) ?? []), tray.team]);
    }
    for (const [things, teams] of alike) print(wrap(say("trayOf", { teams, things }), "  "));
  }
}

/** Lessons are spoken of by their titles. */
function named(data: Readonly<Record<string, unknown>>, title: (id: string) => string): Record<string, unknown> {
  return typeof data.lesson === "string" ? { ...data, lesson: title(data.lesson) } : { ...data };
}

export function className(classFile: ClassFile, id: string): string {
  return classFile.classes.find((c) => c.id === id)?.name ?? id;
}
