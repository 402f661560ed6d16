// The catalogue: every kind of part by its name, and the types that are a kind with certain values.
//
// To add a part: write kinds/<name>.ts and add it here (README.md of this room).
// Does not know: prices, what a school owns.
import { board } from "./kinds/board.ts";
import { breadboard, computer, multimeter, usbCable, wire } from "./kinds/building.ts";
import { button } from "./kinds/button.ts";
import { led } from "./kinds/led.ts";
import { photoresistor } from "./kinds/photoresistor.ts";
import { potentiometer } from "./kinds/potentiometer.ts";
import { resistor } from "./kinds/resistor.ts";
import { servo } from "./kinds/servo.ts";
import { adapter, battery4aa, battery9v, powerBank, usbPort } from "./kinds/supplies.ts";
import type { PartKind, PartValues } from "./partKind.ts";

const kinds: readonly PartKind[] = [
  resistor,
  potentiometer,
  photoresistor,
  button,
  led,
  servo,
  usbPort,
  adapter,
  powerBank,
  battery9v,
  battery4aa,
  board,
  breadboard,
  wire,
  usbCable,
  computer,
  multimeter,
];

/** Every kind by its name. */
export const catalogue: ReadonlyMap<string, PartKind> = new Map(kinds.map((kind) => [kind.id, kind]));

/** Kinds by the names of their types: "BC547" is an npn. */
const kindOfType: ReadonlyMap<string, PartKind> = new Map(
  kinds.flatMap((kind) => Object.keys(kind.types ?? {}).map((type) => [type, kind] as const)),
);

/** All names that a lesson may write behind `part:`, kinds first. */
export const partNames: readonly string[] = [...catalogue.keys(), ...kindOfType.keys()];

/** @returns the kind that a lesson means by `part: name` with, where it names one, `type: type`; null if there is none. */
export function findKind(name: string, type?: string): { readonly kind: PartKind; readonly type: string | null } | null {
  const special = type === undefined ? undefined : kinds.find((k) => k.typeOf?.kind === name && k.typeOf.type === type);
  if (special) return { kind: special, type: null };
  const kind = catalogue.get(name);
  if (kind) return { kind, type: null };
  const typed = kindOfType.get(name);
  return typed ? { kind: typed, type: name } : null;
}

/** @returns all values of a part: those given, then those of its type, then the usual ones. */
export function allValues(kind: PartKind, given: PartValues): PartValues {
  const usual = Object.entries(kind.parameters).flatMap(([name, { usual }]) => (usual ? [[name, usual.value] as const] : []));
  const values = { ...Object.fromEntries(usual), ...given };
  return { ...values, ...kind.types?.[String(values.type)], ...given };
}
