// The plan of a class file: every lesson of every class on its day, rehearsed, counted and judged.
//
// In this order, because each step needs the one before: rehearse every lesson once with the parts and supplies on hand;
// choose its supply and prove its substitutes; make the teams and mend them for absences; share out the stock; then judge
// each lesson on its day and say what to prepare. What is costly is remembered under a hash of all it depends on.
// Does not know: words, files, how a rehearsal, a rota or a share is found.
import { contentHash, type Day, finish, type LongWork, type Progress, rememberSlices, type World } from "../../base/index.ts";
import type { Lesson } from "../../bench/lesson/index.ts";
import { catalogue, parseItemKey } from "../../bench/parts/index.ts";
import { type RehearsalResult, rehearse } from "../../bench/rehearsal/index.ts";
import { makeRota, type Rota, repairDay } from "../classroom/index.ts";
import { chargingPlan, type EquipmentReport, equipmentFor } from "../equipment/index.ts";
import { type ClassFile, type ClassGroup, type ItemKey, type Kit, meetingsOf } from "../file/index.ts";
import {
  type Cupboard,
  coverSittings,
  cupboard,
  type LossRates,
  lessonNeeds,
  lossRates,
  type Sitting,
  usualSupply,
} from "../stock/index.ts";
import { groupsAtOnce, ownPart, withGroup } from "./atOnce.ts";
import { chooseSupply, type SupplyChoice } from "./chooseSupply.ts";
import { judgeSitting, type Place } from "./judgeSitting.ts";
import type { Plan, PlannedLesson } from "./plan.ts";
import { prepare } from "./prepare.ts";
import { type ProvenItems, proveItems } from "./proveItems.ts";

export interface PlanInput {
  readonly classFile: ClassFile;
  readonly kits: ReadonlyMap<string, Kit>;
  /** Lessons by id; null where a lesson could not be read. */
  readonly lessons: ReadonlyMap<string, Lesson | null>;
  readonly seed: number;
}

/** A lesson after its rehearsal with what the school owns. */
export interface RehearsedLesson {
  readonly lesson: Lesson;
  readonly rehearsal: RehearsalResult;
  readonly proven: ProvenItems;
}

/** The plan, with what an order needs besides. */
export interface PlannedClass {
  readonly plan: Plan;
  readonly sittings: readonly Sitting[];
  readonly store: Cupboard;
  readonly rates: LossRates;
}

/** Version of the engines behind a remembered rehearsal; raise it when their answers change. */
const engineVersion = 1;

/** @returns the plan of all lessons from today on, in the order of their days. */
export function* planClass(input: PlanInput, world: Pick<World, "today" | "remember" | "known">): LongWork<PlannedClass> {
  const { classFile, kits, lessons } = input;
  const store = cupboard(classFile, kits, world.today);
  const rates = lossRates(classFile);
  const rotas = new Map<string, Rota>();
  for (const group of classFile.classes) {
    yield { done: rotas.size, total: classFile.classes.length, doing: "teams" };
    rotas.set(group.id, rotaOf(group, input.seed));
  }
  const places = classFile.classes
    .flatMap((group) => placesOf(group, rotas.get(group.id)!, world.today, classFile))
    .sort((a, b) => (a.at.date < b.at.date ? -1 : a.at.date > b.at.date ? 1 : a.at.start - b.at.start));

  const wanted = [...new Set(places.map((p) => p.at.lesson))];
  const rehearsed = new Map<string, RehearsedLesson>();
  for (const [i, id] of wanted.entries()) {
    const progress = { done: i, total: wanted.length, doing: "rehearse" };
    yield progress;
    const lesson = lessons.get(id);
    if (lesson) rehearsed.set(id, yield* rehearseLesson(lesson, input, store, world, progress));
  }

  const prepared = places.map((place) => {
    const known = rehearsed.get(place.at.lesson) ?? null;
    const time = { date: place.at.date, start: place.at.start, minutes: known?.lesson.minutes ?? 0 };
    const equipment = equipmentFor(classFile, time, place.day.teams.length);
    const choice = known === null ? null : supplyFor(known, place, equipment.battery !== null, classFile, store);
    return { place, known, time, equipment, choice };
  });
  const sittings = prepared.map(
    ({ place, known, choice, equipment }): Sitting => ({
      id: place.id,
      class: place.group.id,
      lesson: place.at.lesson,
      date: place.at.date,
      start: place.at.start,
      teams: place.day.teams.length,
      needs: known && choice ? needsOf(known, choice, equipment) : [],
    }),
  );
  const held = sittings.map((sitting, i) => ({
    sitting,
    start: prepared[i]!.time.start,
    end: prepared[i]!.time.start + prepared[i]!.time.minutes,
  }));
  const groups = groupsAtOnce(held);
  const together = held.map((own, i) => withGroup(own, groups[i]!));
  const stock = coverSittings(together, store, rates).map((counted, i) => ownPart(held[i]!, groups[i]!, counted));
  const planned = prepared.map(
    ({ place, known, equipment, choice }, i): PlannedLesson =>
      judgeSitting({ place, classFile, kits, known, choice, stock: stock[i]!, store, equipment }),
  );
  const judged = withEarlierVerdicts(withSharers(planned, groups), rehearsed);
  const charging = new Map(
    prepared.map(({ place, time, choice }) => [
      place.id,
      chargingPlan(classFile, { ...time, teams: place.day.teams.length, supply: choice?.supply ?? null }),
    ]),
  );
  return {
    plan: {
      lessons: judged,
      prepare: prepare(judged, classFile, rehearsed, charging, world.today),
      rotas: classFile.classes.map((group) => ({ class: group.id, rota: rotas.get(group.id)! })),
    },
    sittings: together,
    store,
    rates,
  };
}

function rotaOf(group: ClassGroup, seed: number): Rota {
  const balance = group.balance;
  return finish(
    makeRota({
      pupils: group.pupils.map((p) => p.id),
      size: group.teamSize,
      lessons: group.lessons.length,
      apart: group.apart,
      together: group.together,
      ...(balance === null ? {} : { balance: new Map(group.pupils.map((p) => [p.id, p.marks[balance] ?? 0])) }),
      seed,
    }),
  );
}

function placesOf(group: ClassGroup, rota: Rota, today: Day, classFile: ClassFile): Place[] {
  return meetingsOf(group)
    .map((at, l): Place => {
      const teams = rota.lessons[l] ?? [];
      const day = repairDay({
        teams,
        absent: at.absent,
        size: group.teamSize,
        history: rota.lessons.slice(0, l),
        apart: group.apart,
        together: group.together,
      });
      return { id: `${group.id}/${at.lesson}/${at.date}`, group, at, day };
    })
    .filter(({ at }) => at.date >= today)
    .filter(({ at }) => !classFile.decisions.some((d) => d.kind === "skip" && d.lesson === at.lesson && d.class === group.id));
}

function* rehearseLesson(
  lesson: Lesson,
  { classFile, seed }: PlanInput,
  store: Cupboard,
  world: Pick<World, "remember" | "known">,
  progress: Progress,
): LongWork<RehearsedLesson> {
  const items = [...store.items.keys()].sort();
  const supplies = suppliesToTry(classFile, items);
  const rehearsal = yield* rememberSlices(
    world,
    `rehearse ${engineVersion} ${contentHash({ lesson, supplies, seed })}`,
    () => rehearse(lesson, { supplies, corners: false, seed }),
    progress,
  );
  // Parts are proven on a supply that carries the lesson, the usual one if it does; a weak one would hide what they do.
  const usual = usualPort(classFile);
  const fitting = rehearsal.supplies.filter((r) => r.fits === "fits").map((r) => r.supply);
  const supply = fitting.includes(usual) ? usual : (fitting[0] ?? usual);
  return { lesson, rehearsal, proven: yield* proveItems(lesson, items, supply, classFile, world, seed, progress) };
}

/** @param dark whether mains are off during part of the lesson: then nothing that hangs on a socket counts. */
function supplyFor(
  { lesson, rehearsal }: RehearsedLesson,
  { day }: Place,
  dark: boolean,
  classFile: ClassFile,
  store: Cupboard,
): SupplyChoice {
  const decided = classFile.decisions.findLast((d) => d.kind === "supply" && d.lesson === lesson.id);
  return chooseSupply(
    rehearsal.supplies.filter((r) => !dark || parseItemKey(r.supply)?.kind !== "adapter"),
    (item) => store.items.get(item)?.count ?? 0,
    day.teams.length,
    usualPort(classFile),
    decided?.kind === "supply" ? decided.item : null,
    (item) => classFile.suppliers.some((s) => s.offers.some((o) => o.contains.kind === "item" && o.contains.item === item)),
  );
}

/** What feeds a board if nobody says otherwise: the weakest port of the computers that work. */
function usualPort(classFile: ClassFile): ItemKey {
  const ports = classFile.computers.filter((c) => c.works && c.usbPorts > 0).map((c) => c.usbMilliamps);
  return ports.length > 0 ? `usb-port ${Math.min(...ports)}mA` : usualSupply;
}

/** Supplies to rehearse a lesson with: those on hand, supplies that a supplier sells, and two that every shop has. */
export function suppliesToTry(classFile: ClassFile, items: readonly ItemKey[]): ItemKey[] {
  const isSupply = (item: ItemKey) => catalogue.get(parseItemKey(item)?.kind ?? "")?.supply !== undefined;
  const offered = classFile.suppliers.flatMap((s) =>
    s.offers.flatMap((o) => (o.contains.kind === "item" ? [o.contains.item] : [])),
  );
  return [...new Set([usualPort(classFile), ...[...items, ...offered].filter(isSupply), "adapter 1000mA", "adapter 2000mA"])];
}

function needsOf({ lesson, proven }: RehearsedLesson, choice: SupplyChoice, equipment: EquipmentReport): Sitting["needs"] {
  // Where what is on hand does not go round, the need is for what would: so it is short of it, and an order can buy it.
  const supply = choice.supply ?? choice.helps[0] ?? choice.usual;
  const others = choice.supply === null ? [...choice.others, ...choice.helps] : choice.others;
  return lessonNeeds(lesson, {
    substitutes: proven.substitutes,
    supply,
    supplySubstitutes: [...new Set(others)].filter((item) => item !== supply),
    // Where computers do not go round, two teams sit at one; more cannot see the screen.
    teamsPerComputer: equipment.computers.short > 0 ? 2 : 1,
  });
}

/** Classes that take from the cupboard at the same time are told of each other. */
function withSharers(planned: readonly PlannedLesson[], groups: ReturnType<typeof groupsAtOnce>): PlannedLesson[] {
  return planned.map((p, i) => {
    const classes = groups[i]!.map((h) => h.sitting.class).filter((id) => id !== p.class);
    if (classes.length === 0) return p;
    return { ...p, reasons: [...p.reasons, { verdict: "ready", code: "cupboard-shared-at-once", data: { classes } }] };
  });
}

/** A lesson that builds on one that cannot be held says so; its own verdict stays. */
function withEarlierVerdicts(
  planned: readonly PlannedLesson[],
  rehearsed: ReadonlyMap<string, RehearsedLesson>,
): PlannedLesson[] {
  return planned.map((p) => {
    const needs = rehearsed.get(p.lesson)?.lesson.needs ?? [];
    const late = planned.filter(
      (q) => q.class === p.class && needs.includes(q.lesson) && q.date <= p.date && q.verdict !== "ready" && q !== p,
    );
    const reasons = late.map((q) => ({
      verdict: "ready" as const,
      code: "earlier-lesson-not-ready" as const,
      data: { lesson: q.lesson, verdict: q.verdict },
    }));
    return { ...p, reasons: [...p.reasons, ...reasons] };
  });
}
