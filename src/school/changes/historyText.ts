// A history as text, to lie beside the class file, and the way back with checks.
//
// A history that is damaged, cut, changed by hand or of another state of the class file is dropped whole: half an undo list would
// put back half of what was. The class file itself never depends on it.
// Does not know: where the text is kept.
import * as v from "valibot";
import { contentHash } from "../../base/index.ts";
import { type ClassFile, readClassFile, writeClassFile } from "../file/index.ts";
import { ofObjects, readChange } from "./changeShape.ts";
import { type History, historyDepth, redo, undo } from "./history.ts";
import type { Patch } from "./patch.ts";

/** Far above what 200 acts take; a larger text is not ours. */
const mostCharacters = 20_000_000;
const format = "benchday-history/1";

const at = v.pipe(v.number(), v.integer(), v.minValue(0));
const patch: v.GenericSchema<Patch> = v.lazy(() =>
  v.variant("do", [
    v.strictObject({ do: v.literal("set"), value: v.unknown() }),
    v.strictObject({ do: v.literal("drop") }),
    v.strictObject({ do: v.literal("fields"), of: v.array(v.strictTuple([v.string(), patch])) }),
    v.strictObject({ do: v.literal("entries"), of: v.array(v.strictTuple([at, patch])) }),
    v.strictObject({ do: v.literal("splice"), at, take: at, put: v.array(v.unknown()) }),
  ]),
);
const entries = v.pipe(
  v.array(
    v.strictObject({
      change: v.custom((input) => !("problem" in readChange(input))),
      says: v.strictObject({ code: v.pipe(v.string(), v.startsWith("change.")), data: v.record(v.string(), v.unknown()) }),
      patch,
    }),
  ),
  v.maxLength(historyDepth),
);
const shape = v.strictObject({
  format: v.literal(format),
  /** Hash of everything below. */
  hash: v.string(),
  /** Hash of the class file as it is now, as written. */
  file: v.string(),
  done: entries,
  undone: entries,
  retired: v.array(v.string()),
});

/** @returns the history without its class file, as JSON on one line. */
export function writeHistory({ file, done, undone, retired }: History): string {
  const body = { file: contentHash(writeClassFile(file)), done, undone, retired };
  return JSON.stringify({ format, hash: contentHash(body), ...body });
}

/**
 * @param text what `writeHistory` gave, or anything else.
 * @param file the class file that it lies beside.
 * @returns the history, every step of it tried; null where anything is not as it was written. Never throws.
 */
export function readHistory(text: string, file: ClassFile): History | null {
  if (text.length > mostCharacters) return null;
  try {
    let isHarmful = false;
    const parsed: unknown = JSON.parse(text, (name, value) => {
      isHarmful ||= ofObjects.has(name);
      return value;
    });
    if (isHarmful) return null;
    const read = v.safeParse(shape, parsed);
    if (!read.success) return null;
    const { format: _format, hash, ...body } = read.output;
    const written = writeClassFile(file);
    if (hash !== contentHash(body) || body.file !== contentHash(written)) return null;
    const history = { ...body, file } as History;
    return isWhole(history, written) ? history : null;
  } catch {
    // A patch that does not fit, notation that is none, nesting without end: whatever it is, it is not ours.
    return null;
  }
}

/** Whether all of it can be taken back to a class file, and done again to what there is now. */
function isWhole(history: History, written: string): boolean {
  let walked = history;
  while (walked.done.length > 0) walked = undo(walked);
  if (readClassFile("", writeClassFile(walked.file)).value === null) return false;
  for (let i = 0; i < history.done.length; i += 1) walked = redo(walked);
  if (writeClassFile(walked.file) !== written) return false;
  while (walked.undone.length > 0) walked = redo(walked);
  return readClassFile("", writeClassFile(walked.file)).value !== null;
}
