// The difference between two class files as small plain data, and the way from one to the other by it.
//
// Lists that did not change are the same objects and are not looked into, so a difference costs what the change touched. A patch
// that does not fit is found while it is put on; nothing is guessed.
// Does not know: what a class file means.

/** What to do with one value. */
export type Patch =
  | { readonly do: "set"; readonly value: unknown }
  /** The field is not there. */
  | { readonly do: "drop" }
  | { readonly do: "fields"; readonly of: readonly (readonly [name: string, patch: Patch])[] }
  /** Entries that are other, by their place; the list keeps its length. */
  | { readonly do: "entries"; readonly of: readonly (readonly [at: number, patch: Patch])[] }
  /** From a place on, so many entries go and these come. */
  | { readonly do: "splice"; readonly at: number; readonly take: number; readonly put: readonly unknown[] };

type Fields = Readonly<Record<string, unknown>>;

/** @returns what turns `from` into `to`; null where they are the same. */
export function difference(from: unknown, to: unknown): Patch | null {
  if (from === to) return null;
  if (Array.isArray(from) && Array.isArray(to)) return listDifference(from, to);
  if (!isFields(from) || !isFields(to)) return setTo(to);
  const names = Object.keys(to);
  const gone = Object.keys(from).filter((name) => !Object.hasOwn(to, name));
  const of: (readonly [string, Patch])[] = gone.map((name) => [name, { do: "drop" }]);
  for (const name of names) {
    const patch = Object.hasOwn(from, name) ? fieldDifference(name, from[name], to[name]) : setTo(to[name]);
    if (patch) of.push([name, patch]);
  }
  return of.length === 0 ? null : { do: "fields", of };
}

/** Marks are written in the order in which they stand, so they are taken whole; all other fields have their fixed order. */
function fieldDifference(name: string, from: unknown, to: unknown): Patch | null {
  if (name !== "marks") return difference(from, to);
  return JSON.stringify(from) === JSON.stringify(to) ? null : setTo(to);
}

function setTo(value: unknown): Patch {
  return { do: "set", value };
}

function listDifference(from: readonly unknown[], to: readonly unknown[]): Patch | null {
  if (from.length === to.length) {
    const of = to.flatMap((value, at): (readonly [number, Patch])[] => {
      const patch = difference(from[at], value);
      return patch ? [[at, patch]] : [];
    });
    return of.length === 0 ? null : { do: "entries", of };
  }
  const isEqual = (a: unknown, b: unknown) => difference(a, b) === null;
  const shorter = Math.min(from.length, to.length);
  let head = 0;
  while (head < shorter && isEqual(from[head], to[head])) head += 1;
  let tail = 0;
  while (tail < shorter - head && isEqual(from[from.length - 1 - tail], to[to.length - 1 - tail])) tail += 1;
  return { do: "splice", at: head, take: from.length - head - tail, put: to.slice(head, to.length - tail) };
}

/** @returns the value after the patch. Throws `PatchDoesNotFit` where the value is not the one that the patch was made for. */
export function patched(value: unknown, patch: Patch): unknown {
  switch (patch.do) {
    case "set":
      return patch.value;
    case "fields": {
      if (!isFields(value)) throw new PatchDoesNotFit();
      const fields = new Map(Object.entries(value));
      for (const [name, inside] of patch.of) {
        if (inside.do === "drop") {
          if (!fields.delete(name)) throw new PatchDoesNotFit();
        } else if (inside.do === "set") fields.set(name, inside.value);
        else if (fields.has(name)) fields.set(name, patched(fields.get(name), inside));
        else throw new PatchDoesNotFit();
      }
      return Object.fromEntries(fields);
    }
    case "entries": {
      if (!Array.isArray(value)) throw new PatchDoesNotFit();
      const list: unknown[] = [...value];
      for (const [at, inside] of patch.of) {
        if (!(at in list)) throw new PatchDoesNotFit();
        list[at] = patched(list[at], inside);
      }
      return list;
    }
    case "splice": {
      if (!Array.isArray(value) || patch.at + patch.take > value.length) throw new PatchDoesNotFit();
      return [...value.slice(0, patch.at), ...patch.put, ...value.slice(patch.at + patch.take)];
    }
    case "drop":
      throw new PatchDoesNotFit();
  }
}

/** The value is not what the patch was made for: a fault of ours, or a damaged history. */
export class PatchDoesNotFit extends Error {}

function isFields(value: unknown): value is Fields {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
