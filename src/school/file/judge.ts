// What the judges of a class file share: the document for places, what lies beside it, and where findings go.
//
// Does not know: what is judged.
import type { Document } from "../../base/index.ts";
import type { Kit } from "./classFile.ts";
import type { FileProblem } from "./fileProblem.ts";

/** What lies beside the class file. What is not given is not judged. */
export interface KnownFiles {
  /** Minutes of each lesson by id. */
  readonly lessonMinutes?: ReadonlyMap<string, number>;
  readonly kits?: ReadonlyMap<string, Kit>;
}

export interface Judge {
  readonly document: Document;
  readonly known: KnownFiles;
  readonly report: (problem: FileProblem) => void;
  /** Whether enough errors were reported: looking for near names in a file full of slips would take minutes. */
  readonly isFull: () => boolean;
}

/** A file full of slips is told the first of them; warnings do not take the room of errors. */
const most = 100;

/** @returns a judge, and the list that its findings go to. */
export function makeJudge(document: Document, known: KnownFiles): { judge: Judge; problems: readonly FileProblem[] } {
  const problems: FileProblem[] = [];
  const count = { errors: 0, warnings: 0 };
  const report = (problem: FileProblem) => {
    const kind = problem.severity === "warning" ? "warnings" : "errors";
    if (count[kind] >= most) return;
    count[kind] += 1;
    problems.push(problem);
  };
  return { judge: { document, known, report, isFull: () => count.errors >= most }, problems };
}

/** Minutes after midnight of a time such as "09:05". */
export function minutes(time: string): number {
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
}
