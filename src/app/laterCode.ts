// The code that the first screen does without comes when the first screen stands, or at once when somebody asks for it.
//
// The build turns `import()` into a call of `benchdayLater`: the part lies packed in the file and is run as a script from memory.
// It takes preact, signals and all else that is already there from the start's script, so that there is one of each.
// Does not know: what is in it.
import { type ReadonlySignal, signal } from "@preact/signals";
import { runPacked } from "./engine/runPacked.ts";

export type Later = typeof import("./later.ts");

const here = signal<Later | null>(null);
/** Null until it is there. */
export const later: ReadonlySignal<Later | null> = here;

let asked: Promise<Later> | null = null;

/** Asks for it; once is enough. Rejects where the file is not whole; the next call tries again. */
export function fetchLater(): Promise<Later> {
  asked ??= import("./later.ts").then(
    (code) => {
      here.value = code;
      return code;
    },
    (fault: unknown) => {
      asked = null;
      throw fault;
    },
  );
  return asked;
}

interface Parts {
  /** What each part gives to others, by the name of its file. */
  benchdayParts?: Record<string, unknown>;
  benchdayLater?: (name: string) => Promise<unknown>;
}
const scope = globalThis as unknown as Parts;

/** Once, before anything is asked for. */
export function readyLater(): void {
  scope.benchdayLater = async (name) => {
    if (scope.benchdayParts?.[name] === undefined) await runPacked("later");
    return scope.benchdayParts?.[name];
  };
}
