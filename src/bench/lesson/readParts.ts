// Reads the parts of a lesson: each a kind of the catalogue with its values, in SI and complete.
//
// Does not know: nets, except which legs they use of a part, which tells an electrolytic capacitor from another.
import { type Document, near, type Path } from "../../base/index.ts";
import {
  allValues,
  catalogue,
  findKind,
  itemKey,
  type ParameterSpec,
  type PartKind,
  partNames,
  tellingParameters,
} from "../parts/index.ts";
import type { LessonPart } from "./lesson.ts";
import type { Report } from "./lessonProblem.ts";
import type { LessonShape } from "./lessonSchema.ts";
import { readQuantity, readWord } from "./readValue.ts";

/** Names that mean something of their own in stimuli and expectations. */
const reserved: ReadonlySet<string> = new Set(["text", "volts", "supply"]);
const boardName = "board";

type PartShape = LessonShape["parts"][string];

/**
 * @param legsUsed legs that the nets name, by part.
 * @returns the parts that could be read, by name; the board is always among them.
 */
export function readParts(
  document: Document,
  shapes: LessonShape["parts"],
  legsUsed: ReadonlyMap<string, ReadonlySet<string>>,
  report: Report,
): ReadonlyMap<string, LessonPart> {
  const parts = new Map<string, LessonPart>();
  for (const [name, shape] of Object.entries(shapes)) {
    const path = ["parts", name];
    const place = document.namePlace(path);
    if (reserved.has(name)) report({ code: "lesson.reservedName", place, found: name });
    else if (!/^[A-Za-z][A-Za-z0-9_]{0,19}$/.test(name)) report({ code: "lesson.badPartName", place, found: name.slice(0, 40) });
    else {
      const part = readPart(document, path, name, shape, legsUsed.get(name) ?? new Set(), report);
      if (part) parts.set(name, part);
    }
  }
  if (!parts.has(boardName) && !(boardName in shapes)) {
    const place = document.place([]);
    parts.set(boardName, { name: boardName, kind: "board", values: {}, mayBe: [], item: itemKey("board", {}), place });
  }
  return parts;
}

function readPart(
  document: Document,
  path: Path,
  name: string,
  shape: PartShape,
  legs: ReadonlySet<string>,
  report: Report,
): LessonPart | null {
  const found = findKind(shape.part, typeof shape.type === "string" ? shape.type : undefined);
  if (!found) {
    report({
      code: "lesson.unknownPart",
      place: document.place([...path, "part"]),
      found: shape.part.slice(0, 40),
      near: near(shape.part, partNames),
    });
    return null;
  }
  if ((name === boardName) !== (found.kind.role === "board")) {
    report({ code: "lesson.reservedName", place: document.namePlace(path), found: name === boardName ? name : found.kind.id });
    return null;
  }
  const kind = byLegs(found.kind, legs);
  const given: Record<string, number | string> = found.type === null ? {} : { type: found.type };
  for (const [parameter, value] of Object.entries(shape)) {
    if (parameter === "part" || parameter === "may-be" || (parameter === "type" && kind.typeOf?.type === value)) continue;
    const spec = Object.hasOwn(kind.parameters, parameter) ? kind.parameters[parameter] : undefined;
    if (!spec) {
      const known = [...Object.keys(kind.parameters), "part", "may-be"];
      report({
        code: "lesson.unknownParameter",
        place: document.namePlace([...path, parameter]),
        part: name,
        found: parameter.slice(0, 40),
        near: near(parameter, known),
      });
      continue;
    }
    const read = readParameter(document, [...path, parameter], parameter, value, spec, report);
    if (read !== null) given[parameter] = read;
  }
  for (const [parameter, spec] of Object.entries(kind.parameters))
    if (spec.usual === null && !(parameter in given) && !(parameter in shape))
      report({ code: "lesson.missingParameter", place: document.place(path), part: name, name: parameter });
  const values = allValues(kind, given);
  return {
    name,
    kind: kind.id,
    values,
    mayBe: readMayBe(document, [...path, "may-be"], name, kind, shape["may-be"] ?? [], report),
    item: itemKey(kind.id, values),
    place: document.namePlace(path),
  };
}

/** A capacitor whose legs are called plus and minus is an electrolytic one. */
function byLegs(kind: PartKind, legs: ReadonlySet<string>): PartKind {
  const special = [...catalogue.values()].filter((k) => k.typeOf?.kind === kind.id);
  return special.find((k) => [...legs].some((leg) => k.legs.includes(leg) && !kind.legs.includes(leg))) ?? kind;
}

function readParameter(
  document: Document,
  path: Path,
  name: string,
  value: unknown,
  spec: ParameterSpec,
  report: Report,
): number | string | null {
  const place = document.place(path);
  if (spec.unit === "word") return readWord(value, name, spec.words ?? [], spec.synonyms ?? {}, place, report);
  const rule = {
    unit: spec.unit,
    bare: spec.unit === "%" ? null : (spec.bare ?? 1),
    least: spec.least ?? Number.NEGATIVE_INFINITY,
    most: spec.most ?? Number.POSITIVE_INFINITY,
  };
  return readQuantity(value, name, rule, place, report);
}

/** Values of the parameter that tells the kind's items apart: [180, 270] for a resistor, [red, green] for a LED. */
function readMayBe(
  document: Document,
  path: Path,
  part: string,
  kind: PartKind,
  written: readonly unknown[],
  report: Report,
): readonly (number | string)[] {
  if (written.length === 0) return [];
  const telling = tellingParameters(kind)[0];
  if (!telling) {
    report({ code: "lesson.nothingMayBe", place: document.namePlace(path), part });
    return [];
  }
  const [name, spec] = telling;
  return written.flatMap((value, i) => {
    const read = readParameter(document, [...path, i], name, value, spec, report);
    return read === null ? [] : [read];
  });
}
