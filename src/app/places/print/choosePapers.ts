// Which papers the print place is about: by its address, or everything for the next lesson where nothing was asked for.
//
// An address says what is wanted, so that Today and a lesson can lead here with one tap and the back button works.
// Does not know: how a paper is made, what stands on it.
import type { Day } from "../../../base/index.ts";
import type { PaperKind } from "../../../documents/index.ts";
import { byTime, type ClassFile, type ClassGroup } from "../../../school/file/index.ts";

/** "all": everything that is handed out or held at one lesson. */
export type Choice =
  | { readonly what: "all" | "run-sheet" | "tray"; readonly sitting: string }
  | { readonly what: "rota"; readonly class: string }
  | { readonly what: "label" | "order" };

/** Papers of one lesson in the order of use: the teacher reads first, then the trays are set out. */
export const everything: readonly PaperKind[] = ["run-sheet", "tray"];

/** What is behind `#/print/`; null where it says nothing that can be printed. */
export function choiceAt(parts: readonly string[]): Choice | null {
  const [what = "", group = "", lesson = "", date = ""] = parts;
  if ((what === "all" || what === "run-sheet" || what === "tray") && date !== "")
    return { what, sitting: `${group}/${lesson}/${date}` };
  if (what === "rota" && group !== "") return { what, class: group };
  if (what === "label" || what === "order") return { what };
  return null;
}

/** The address of a choice, without its `#`. */
export function addressOf(choice: Choice): string {
  if ("sitting" in choice) return `/print/${choice.what}/${choice.sitting.split("/").map(encodeURIComponent).join("/")}`;
  if ("class" in choice) return `/print/${choice.what}/${encodeURIComponent(choice.class)}`;
  return `/print/${choice.what}`;
}

/** What the engine is asked for. */
export function wishOf(choice: Choice): { kinds: readonly PaperKind[]; sittings: readonly string[]; classes: readonly string[] } {
  if (choice.what === "all") return { kinds: everything, sittings: [choice.sitting], classes: [] };
  if ("sitting" in choice) return { kinds: [choice.what], sittings: [choice.sitting], classes: [] };
  return { kinds: [choice.what], sittings: [], classes: "class" in choice ? [choice.class] : [] };
}

export interface Meeting {
  readonly sitting: string;
  readonly class: string;
  readonly lesson: string;
  readonly date: Day;
  /** Minutes after midnight. */
  readonly start: number;
}

/**
 * The lessons that are still to be held, first one first. What is under way counts: its papers may be wanted.
 *
 * @param minutes how long a lesson takes; 0 where nobody knows. @param clock minutes after midnight.
 */
export function meetingsToCome(
  classFile: ClassFile,
  groups: readonly ClassGroup[],
  today: Day,
  clock: number,
  minutes: (lesson: string) => number,
): Meeting[] {
  return groups
    .flatMap((group) =>
      group.lessons
        .filter(
          ({ lesson }) => !classFile.decisions.some((d) => d.kind === "skip" && d.lesson === lesson && d.class === group.id),
        )
        .map(({ lesson, date, start }) => ({ sitting: `${group.id}/${lesson}/${date}`, class: group.id, lesson, date, start })),
    )
    .filter(({ date, start, lesson }) => date > today || (date === today && start + minutes(lesson) > clock))
    .sort(byTime);
}
