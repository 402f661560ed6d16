// Puts what a person chose in the place of a clash: mine, theirs, or nothing where one of them took it away.
//
// A clash names its place by field names and the keys of entries; after a merge the old state stands there. Whether the whole then
// still makes sense is for the reader of class files to say.
// Does not know: how two copies are merged, how a clash is shown.
import type { Clash } from "../../../school/changes/index.ts";
import type { ClassFile } from "../../../school/file/index.ts";

/** @returns the class file with the choice in it, or null where the place is not found any more. */
export function settleClash(file: ClassFile, clash: Clash, choice: "mine" | "theirs"): ClassFile | null {
  const settled = settle(file, clash.path, clash.base, clash[choice]);
  return settled === undefined ? null : (settled as ClassFile);
}

/** @returns undefined where there is no such place. */
function settle(node: unknown, path: readonly string[], before: unknown, chosen: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return chosen;
  if (Array.isArray(node))
    return rest.length === 0 ? settleEntry(node, before, chosen) : settleInside(node, step, rest, before, chosen);
  if (typeof node !== "object" || node === null) return undefined;
  // The day and the time of a meeting are one thing.
  if (rest.length === 0 && step === "when" && !("when" in node)) return { ...node, ...(chosen as object) };
  if (!Object.hasOwn(node, step) && rest.length > 0) return undefined;
  const inside = settle((node as Record<string, unknown>)[step], rest, before, chosen);
  return inside === undefined ? undefined : { ...node, [step]: inside };
}

/** An entry taken whole: the old one is in the list if there was one. */
function settleEntry(list: readonly unknown[], before: unknown, chosen: unknown): unknown {
  const at = before === null ? -1 : list.findIndex((entry) => isSame(entry, before));
  if (at < 0) return before !== null ? undefined : chosen === null ? list : [...list, chosen];
  return chosen === null ? list.filter((_, n) => n !== at) : list.map((entry, n) => (n === at ? chosen : entry));
}

function settleInside(
  list: readonly unknown[],
  step: string,
  rest: readonly string[],
  before: unknown,
  chosen: unknown,
): unknown {
  const at = list.findIndex((entry) => keysOf(entry).includes(step));
  const inside = at < 0 ? undefined : settle(list[at], rest, before, chosen);
  return inside === undefined ? undefined : list.map((entry, n) => (n === at ? inside : entry));
}

/** What an entry with something inside it may be called: classes, pupils, suppliers by id, meetings by lesson or lesson and day. */
function keysOf(entry: unknown): unknown[] {
  const { id, lesson, date } = entry as { id?: unknown; lesson?: unknown; date?: unknown };
  return [id, lesson, `${lesson}/${date}`];
}

/** Equal whatever the order of the fields. */
function isSame(a: unknown, b: unknown): boolean {
  return plain(a) === plain(b);
}

function plain(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown) =>
    typeof inner === "object" && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}
