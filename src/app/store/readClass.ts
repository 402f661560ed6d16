// What stands of one class: all its generations and the newest that can be trusted.
//
// Heads are small and are read all; bodies only until one passes. The newest by counter wins if it is whole; if it is damaged
// the next older one is taken and that is told; if it is of a newer version nothing is taken. Nothing is mended here.
// Does not know: who writes, what is thinned.
import type { Bucket } from "./bucket.ts";
import { counterOf, folderOf, type Head, readBody, readHead } from "./generation.ts";
import type { KeepingTrouble, Snapshot } from "./store.ts";

export interface StandingGeneration {
  readonly name: string;
  readonly counter: number;
  readonly status: "whole" | "newer" | "damaged";
  readonly head: Head | null;
  readonly hash: string | null;
}

export interface Standing {
  /** Newest first; their bodies are not looked at, except those of `taken` and of what stood above it. */
  readonly generations: readonly StandingGeneration[];
  /** The name that a save must find on top. */
  readonly top: string | null;
  readonly taken: { readonly name: string; readonly head: Head; readonly hash: string; readonly snapshot: Snapshot } | null;
  readonly trouble: KeepingTrouble | null;
  /** True where the newest says that the class was taken off this computer. */
  readonly isGone: boolean;
}

/** Heads of a class, newest first. */
export async function readHeads(bucket: Bucket, id: string): Promise<StandingGeneration[]> {
  const folder = folderOf("heads", id);
  const heads = (await bucket.entries(folder)).map(([key, bytes]): StandingGeneration => {
    const name = key.slice(folder.length);
    const read = readHead(id, name, bytes);
    const whole = read.status === "whole" ? read : null;
    return { name, counter: counterOf(name), status: read.status, head: whole?.head ?? null, hash: whole?.hash ?? null };
  });
  return heads.reverse();
}

/** Reads a class. @throws what the bucket throws. */
export async function readClass(bucket: Bucket, id: string): Promise<Standing> {
  const generations = await readHeads(bucket, id);
  const top = generations[0]?.name ?? null;
  let isDamaged = false;
  for (const [i, { name, status, head, hash }] of generations.entries()) {
    if (status === "newer") return { generations, top, taken: null, trouble: "newer", isGone: false };
    if (status === "whole" && head?.gone && i === 0) return { generations, top, taken: null, trouble: null, isGone: true };
    const body = status === "whole" ? await bucket.get(folderOf("bodies", id) + name) : null;
    const snapshot = head && !head.gone ? readBody(head, body) : null;
    if (head && hash && snapshot)
      return { generations, top, taken: { name, head, hash, snapshot }, trouble: isDamaged ? "damaged" : null, isGone: false };
    generations[i] = { ...generations[i]!, status: "damaged" };
    isDamaged = true;
  }
  return { generations, top, taken: null, trouble: isDamaged ? "damaged" : null, isGone: false };
}
