// The least that a place to keep things must do: named bytes, several written in one step, and every call may fail.
//
// The store is written against this and nothing else, so that the same code runs over the browser's database, over memory, and
// over a simulated disk whose power is cut. Names sort as text; a prefix is a folder.
// Does not know: what the bytes mean, who writes, what is told to a person.
import type { KeepingTrouble } from "./store.ts";

export interface Write {
  readonly key: string;
  /** Null takes the record away. */
  readonly bytes: Uint8Array | null;
}

export interface PutOptions {
  /** Nothing is written unless the last name under `prefix` is still `last`; looked at in the same step as the writing. */
  readonly onlyIf?: { readonly prefix: string; readonly last: string | null };
  /** True where the answer must wait until the storage has flushed. */
  readonly flushed: boolean;
}

export interface Bucket {
  /** Writes all or nothing. Resolves when it is there, and with "behind" when `onlyIf` did not hold; rejects when it failed. */
  put(writes: readonly Write[], options: PutOptions): Promise<"done" | "behind">;
  get(key: string): Promise<Uint8Array | null>;
  /** Names under a prefix, sorted. */
  keys(prefix: string): Promise<readonly string[]>;
  /** Names and bytes under a prefix, sorted by name. */
  entries(prefix: string): Promise<readonly (readonly [string, Uint8Array])[]>;
  /** Takes everything away. */
  clear(): Promise<void>;
  close(): void;
}

/** An error of ours whose trouble is known already. */
export class BucketError extends Error {
  readonly trouble: KeepingTrouble;
  constructor(trouble: KeepingTrouble, detail: string) {
    super(detail);
    this.name = "BucketError";
    this.trouble = trouble;
  }
}

/** What an error of the storage means to a person. Names: Indexed Database API 3.0, section "Exceptions". */
export function troubleOf(error: unknown): KeepingTrouble {
  if (error instanceof BucketError) return error.trouble;
  const { name, message } = nameOf(error);
  if (name === "QuotaExceededError") return "full";
  if (name === "VersionError") return "newer";
  if (name === "SecurityError") return "no-storage";
  // A full disk comes as an unknown error with words ("IO error: … FILE_ERROR_NO_SPACE", Chromium 156).
  if (/no.?space|disk.*full|full.*disk|quota/i.test(message)) return "full";
  return "failed";
}

/** The error's own name and words, for a problem report. */
export function detailOf(error: unknown): string {
  const { name, message } = nameOf(error);
  return message === "" ? name : `${name}: ${message}`;
}

function nameOf(error: unknown): { name: string; message: string } {
  if (typeof error !== "object" || error === null) return { name: "Error", message: String(error) };
  const { name, message } = error as { name?: unknown; message?: unknown };
  return { name: typeof name === "string" ? name : "Error", message: typeof message === "string" ? message : "" };
}
