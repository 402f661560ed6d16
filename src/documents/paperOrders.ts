// Which papers a wish asks for: kinds, lessons on their days and classes, turned into papers with all that each is made from.
//
// Papers of a lesson come lesson by lesson, in the order of use; what belongs to a whole class or class file follows.
// Does not know: how a paper looks, where it is shown or kept.
import type { Lesson } from "../bench/lesson/index.ts";
import type { ClassFile, Kit } from "../school/file/index.ts";
import type { OrderPlan } from "../school/order/index.ts";
import type { Plan } from "../school/readiness/index.ts";
import type { PaperKind, PaperOrder } from "./makePaper.ts";
import { waveformInput } from "./waveformPaper.ts";

export interface PaperMakings {
  readonly classFile: ClassFile;
  readonly kits: ReadonlyMap<string, Kit>;
  /** Lessons that could be read, by id. */
  readonly lessons: ReadonlyMap<string, Lesson>;
  readonly plan: Plan;
  /** Null where no order is wished for. */
  readonly purchase: OrderPlan | null;
}

export interface PaperWish {
  readonly kinds: readonly PaperKind[];
  /** Lessons on their days, by the id of the sitting; tray lists and run sheets are made for these alone. */
  readonly sittings: readonly string[];
  /** Classes whose rota is wished for; all where empty. */
  readonly classes: readonly string[];
}

/** @returns the papers in the order of use; what nobody has (a sitting that is over, an unreadable lesson) is left out. */
export function paperOrders(makings: PaperMakings, { kinds, sittings, classes }: PaperWish): PaperOrder[] {
  const { plan, lessons, classFile } = makings;
  const ofLessons = sittings.flatMap((id) => {
    const planned = plan.lessons.find((l) => l.id === id);
    const lesson = lessons.get(planned?.lesson ?? "");
    if (!planned || !lesson) return [];
    const input = { classFile, lesson, planned };
    return kinds.flatMap((kind): PaperOrder[] => {
      if (kind === "tray" || kind === "run-sheet") return [{ kind, input }];
      const wave = kind === "waveform" ? waveformInput(input) : null;
      return wave === null ? [] : [{ kind: "waveform", input: wave }];
    });
  });
  return [...ofLessons, ...kinds.flatMap((kind) => ofTheWhole(kind, makings, classes))];
}

function ofTheWhole(kind: PaperKind, makings: PaperMakings, classes: readonly string[]): PaperOrder[] {
  const { plan, lessons, classFile, kits, purchase } = makings;
  if (kind === "label") return [{ kind, input: { classFile } }];
  if (kind === "order") return purchase === null ? [] : [{ kind, input: { classFile, purchase, kits, lessons } }];
  if (kind !== "rota") return [];
  return plan.rotas
    .filter(({ class: id }) => classes.length === 0 || classes.includes(id))
    .map(({ class: id, rota }) => ({ kind, input: { classFile, class: id, rota, lessons } }));
}
