// Three-way merging of single values and of lists whose entries have keys.
//
// What only one side changed is taken from that side; what both changed to the same is taken once; what both changed otherwise is
// a clash, and the old value stays until somebody chooses. Nothing here prefers one side, so that a merge is the same both ways.
// Does not know: what a class file holds.
import { isSame } from "./outcome.ts";

/** Both sides changed the same thing otherwise. Null where there is none. */
export interface Clash {
  /** Names and keys from the top: "classes", "7b", "pupils", "p05". */
  readonly path: readonly string[];
  readonly base: unknown;
  readonly mine: unknown;
  readonly theirs: unknown;
}

/** The same thing in the three files; undefined where it is not there. */
export interface Three<Value> {
  readonly base: Value;
  readonly mine: Value;
  readonly theirs: Value;
}

export interface Merging {
  readonly clashes: Clash[];
}

/** A value that is taken whole. */
export function mergeValue<Value>(merging: Merging, path: readonly string[], three: Three<Value>): Value {
  const { base, mine, theirs } = three;
  if (isSame(mine, theirs) || isSame(theirs, base)) return mine;
  if (isSame(mine, base)) return theirs;
  clash(merging, path, three);
  return base;
}

/** Notes a clash; those inside it are told by it. */
export function clash({ clashes }: Merging, path: readonly string[], { base, mine, theirs }: Three<unknown>): void {
  const inside = (other: Clash) => path.every((step, i) => other.path[i] === step);
  for (let i = clashes.length - 1; i >= 0; i -= 1) if (inside(clashes[i] as Clash)) clashes.splice(i, 1);
  clashes.push({ path, base: base ?? null, mine: mine ?? null, theirs: theirs ?? null });
}

/** One field after the other. */
export function mergeFields<Value extends object, Name extends keyof Value & string>(
  merging: Merging,
  path: readonly string[],
  three: Three<Value>,
  names: readonly Name[],
): Pick<Value, Name> {
  const { base, mine, theirs } = three;
  const entries = names.map((name) => [
    name,
    mergeValue(merging, [...path, name], { base: base[name], mine: mine[name], theirs: theirs[name] }),
  ]);
  return Object.fromEntries(entries) as Pick<Value, Name>;
}

/**
 * Entry by entry. Entries with one key are told apart by their place among them.
 *
 * @param inside merges an entry that all three files have; entries are taken whole where it is not given.
 */
export function mergeList<Entry>(
  merging: Merging,
  path: readonly string[],
  three: Three<readonly Entry[]>,
  keyOf: (entry: Entry) => string,
  inside: (path: readonly string[], three: Three<Entry>) => Entry = (at, entries) => mergeValue(merging, at, entries),
): readonly Entry[] {
  if (isSame(three.mine, three.theirs) || isSame(three.theirs, three.base)) return three.mine;
  if (isSame(three.mine, three.base)) return three.theirs;
  const [base, mine, theirs] = [three.base, three.mine, three.theirs].map((list) => byKey(list, keyOf)) as [
    ReadonlyMap<string, Entry>,
    ReadonlyMap<string, Entry>,
    ReadonlyMap<string, Entry>,
  ];
  const merged = new Map<string, Entry>();
  for (const key of new Set([...base.keys(), ...mine.keys(), ...theirs.keys()])) {
    const [b, m, t] = [base.get(key), mine.get(key), theirs.get(key)];
    const at = [...path, key];
    const entry =
      b !== undefined && m !== undefined && t !== undefined
        ? inside(at, { base: b, mine: m, theirs: t })
        : mergeValue<Entry | undefined>(merging, at, { base: b, mine: m, theirs: t });
    if (entry !== undefined) merged.set(key, entry);
  }
  const keys = { base: [...base.keys()], mine: [...mine.keys()], theirs: [...theirs.keys()] };
  return mergeOrder(merging, path, keys)
    .filter((key) => merged.has(key))
    .map((key) => merged.get(key) as Entry);
}

function byKey<Entry>(list: readonly Entry[], keyOf: (entry: Entry) => string): ReadonlyMap<string, Entry> {
  const map = new Map<string, Entry>();
  for (const entry of list) {
    const key = keyOf(entry);
    let n = 1;
    while (map.has(n === 1 ? key : `${key} #${n}`)) n += 1;
    map.set(n === 1 ? key : `${key} #${n}`, entry);
  }
  return map;
}

/** Where all keys stand: old ones as the side that turned them has them, new ones behind what they stood behind. */
function mergeOrder(
  merging: Merging,
  path: readonly string[],
  { base, mine, theirs }: Three<readonly string[]>,
): readonly string[] {
  const [inMine, inTheirs] = [new Set(mine), new Set(theirs)];
  const shared = new Set(base.filter((key) => inMine.has(key) && inTheirs.has(key)));
  const only = (keys: readonly string[]) => keys.filter((key) => shared.has(key));
  const order = mergeValue(merging, [...path, "order"], { base: only(base), mine: only(mine), theirs: only(theirs) });
  const out = [...order];
  // Keys that one side dropped keep a place too: a clash may keep their entries.
  const isBase = new Set(base);
  place(out, base, (key) => !shared.has(key));
  const anchors = new Map<string, string>();
  for (const keys of [mine, theirs])
    for (const [i, key] of keys.entries()) {
      if (isBase.has(key)) continue;
      const before = keys.slice(0, i).findLast((other) => isBase.has(other)) ?? "";
      const known = anchors.get(key);
      // Both sides may have put it in other places; neither side is preferred.
      if (known === undefined || before < known) anchors.set(key, before);
    }
  const rank = (key: string) => Math.max(mine.indexOf(key), theirs.indexOf(key));
  const added = [...anchors.keys()].sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1));
  for (const key of added.reverse()) {
    const anchor = anchors.get(key) as string;
    out.splice(anchor === "" ? 0 : out.indexOf(anchor) + 1, 0, key);
  }
  return out;
}

/** Puts in keys of a list behind the key that they stand behind there. */
function place(out: string[], keys: readonly string[], isWanted: (key: string) => boolean): void {
  for (const [i, key] of keys.entries()) {
    if (!isWanted(key)) continue;
    const before = keys[i - 1];
    out.splice(before === undefined ? 0 : out.indexOf(before) + 1, 0, key);
  }
}
