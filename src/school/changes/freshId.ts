// Ids for what is new: a number above every number that was in use, also by what was taken away or undone since.
//
// A paper that speaks of p31 must never come to speak of somebody else.
// Does not know: where the ids that left are remembered (history.ts).
import { type ClassFile, isId } from "../file/index.ts";

/** Among what an id tells one from the others: the pupils of a class, the devices of a kind. */
export type IdScope = "boards" | "cables" | "computers" | `pupils ${string}`;

/** @returns the key of an id in the set of ids that left. */
export function retiredKey(scope: IdScope, id: string): string {
  return `${scope}/${id}`;
}

/** @returns the keys of all ids of a class file that new ones could be given beside. */
export function idKeys(classFile: ClassFile): Set<string> {
  const keys = new Set<string>();
  const add = (scope: IdScope, list: readonly { readonly id: string }[]) => {
    for (const { id } of list) keys.add(retiredKey(scope, id));
  };
  for (const group of classFile.classes) add(`pupils ${group.id}`, group.pupils);
  for (const scope of ["boards", "cables", "computers"] as const) add(scope, classFile[scope]);
  return keys;
}

/**
 * @param used ids of the list that are there now, in its order.
 * @param usual what an id looks like where there is none to follow: "p01".
 * @returns a way to take one new id after the other.
 */
export function freshIds(
  scope: IdScope,
  used: readonly string[],
  usual: string,
  retired: ReadonlySet<string> = new Set(),
): () => string {
  const pattern = /^(.*?)(\d{1,9})$/su;
  const [, prefix = "", digits = ""] = pattern.exec(used.findLast((id) => pattern.test(id)) ?? "") ?? pattern.exec(usual) ?? [];
  const taken = new Set(used);
  const start = `${scope}/`;
  const gone = [...retired].filter((key) => key.startsWith(start)).map((key) => key.slice(start.length));
  let number = Math.max(0, ...[...used, ...gone].map((id) => Number(pattern.exec(id)?.[2] ?? 0)));
  return () => {
    for (;;) {
      number += 1;
      const written = String(number).padStart(digits.length, "0");
      const id = [prefix + written, usual.replace(/\d+$/, "") + written].find(isId) ?? written;
      if (taken.has(id) || retired.has(retiredKey(scope, id))) continue;
      taken.add(id);
      return id;
    }
  };
}
