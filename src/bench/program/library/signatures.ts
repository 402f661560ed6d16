// The library as one table: by name, all forms of a function.
//
// A tree names a form as "name/number", so that the checked program stays plain data.
// Does not know: what the functions do.
import { type Type, types } from "../check/types.ts";
import { charFunctions } from "./charFunctions.ts";
import type { LibraryFunction } from "./define.ts";
import { letterFunctions } from "./letterFunctions.ts";
import { mathFunctions } from "./mathFunctions.ts";
import { memoryFunctions } from "./memoryFunctions.ts";
import { pinFunctions } from "./pinFunctions.ts";
import { serialMethods } from "./serialMethods.ts";
import { servoMethods } from "./servoMethods.ts";
import { textMethods } from "./textMethods.ts";
import { timeFunctions } from "./timeFunctions.ts";

const table = new Map<string, LibraryFunction[]>();
for (const f of [
  ...pinFunctions,
  ...timeFunctions,
  ...mathFunctions,
  ...letterFunctions,
  ...charFunctions,
  ...memoryFunctions,
  ...serialMethods,
  ...servoMethods,
  ...textMethods,
]) {
  const forms = table.get(f.name);
  if (forms) forms.push(f);
  else table.set(f.name, [f]);
}

export function libraryForms(name: string): readonly LibraryFunction[] | null {
  return table.get(name) ?? null;
}

/** @param id "name/number", or a name with one form only. */
export function libraryFunction(id: string): LibraryFunction {
  const cut = id.lastIndexOf("/");
  const forms = table.get(cut < 0 ? id : id.slice(0, cut));
  return forms![cut < 0 ? 0 : Number(id.slice(cut + 1))]!;
}

/** Names that a program can write by themselves. */
export function libraryNames(): string[] {
  return [...table.keys()].filter((name) => !name.includes(".")).concat("Serial", "F", "A0", "A1", "A2", "A3", "A4", "A5");
}

/** Names of the methods of "String", "Serial", "Servo". */
export function libraryMembers(kind: string): string[] {
  return [...table.keys()].filter((name) => name.startsWith(`${kind}.`)).map((name) => name.slice(kind.length + 1));
}

/** The type of a thing of the library, such as Serial. */
export function libraryObject(name: string): Type | null {
  return name === "Serial" ? types.serial : null;
}
