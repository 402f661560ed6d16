// Reads what a lesson expects a person to notice: "LED1: lit", "SERVO1: 90 degrees", "text: { contains: ok }".
//
// Which words belong to a part follows from what one can notice at it (its senses in the catalogue): a lamp is lit, a motor
// turns. A part with several lights names one: "SEG1.a: lit".
// Does not know: when it should be so, how it is judged.
import { type Document, near, type Path } from "../../base/index.ts";
import { catalogue, type Noticing } from "../parts/index.ts";
import type { Expectation, LessonPart } from "./lesson.ts";
import type { Report } from "./lessonProblem.ts";
import { readLeg } from "./readNets.ts";
import { type QuantityRule, readQuantity, readWord } from "./readValue.ts";

type Sense = Noticing["sense"];

/** Words by sense, as lessons write them. */
export const seenWords: Readonly<Record<Sense, readonly string[]>> = {
  light: ["dark", "dim", "lit", "too bright", "blinking"],
  sound: ["silent", "sounding"],
  angle: [],
  turning: ["stopped", "turning", "turning back", "stalled"],
  steps: ["stopped", "turning", "turning back", "stalled"],
  contact: ["on", "off"],
};

/** Figures by sense. */
const figuresOf: Readonly<Record<Sense, readonly string[]>> = {
  light: ["hertz", "duty"],
  sound: ["hertz"],
  angle: ["degrees"],
  turning: [],
  steps: [],
  contact: [],
};

const rules: Readonly<Record<string, QuantityRule>> = {
  hertz: { unit: "Hz", bare: 1, least: 0.001, most: 100_000 },
  duty: { unit: "%", bare: null, least: 0, most: 1 },
  degrees: { unit: "1", bare: 1, least: 0, most: 360 },
  tolerance: { unit: "%", bare: null, least: 0, most: 1 },
  is: { unit: "V", bare: 1, least: -100, most: 100 },
};

/** A share by which figures may differ where the author names none: what eyes, ears and class meters can tell. */
export const usualTolerance = 0.1;

/** What a reader of expectations needs to know around it. */
export interface Around {
  readonly document: Document;
  readonly parts: ReadonlyMap<string, LessonPart>;
  /** Names of all parts in the file, also of those that could not be read. */
  readonly declared: ReadonlySet<string>;
  readonly report: Report;
}

type Figures = Readonly<Record<string, unknown>>;
const isMapping = (value: unknown): value is Figures => typeof value === "object" && value !== null;

/** @param path where `value` stands; its last step is `name`. @returns null after reporting what is wrong. */
export function readExpectation(name: string, value: unknown, path: Path, around: Around): Expectation | null {
  if (name === "text") return readText(value, path, around);
  if (name === "volts") return readVolts(value, path, around);
  if (name === "board") {
    const seen = readWord(value, name, ["running", "resets"], {}, around.document.place(path), around.report);
    return seen === null ? null : { kind: "board", seen: seen as "running" | "resets" };
  }
  return readPartExpectation(name, value, path, around);
}

function readText(value: unknown, path: Path, { document, report }: Around): Expectation | null {
  if (typeof value === "string") return { kind: "text", is: value };
  if (!isMapping(value)) {
    report({
      code: "document.wrongType",
      place: document.place(path),
      path: path.join("."),
      expected: "text",
      found: String(value),
    });
    return null;
  }
  let outcome: Expectation | null = null;
  for (const [figure, text] of Object.entries(value)) {
    if (figure !== "contains" && figure !== "is")
      reportFigure("text", figure, ["is", "contains"], [...path, figure], document, report);
    else if (typeof text !== "string")
      report({
        code: "document.wrongType",
        place: document.place([...path, figure]),
        path: [...path, figure].join("."),
        expected: "text",
        found: String(text),
      });
    else outcome = { ...(outcome ?? { kind: "text" }), kind: "text", [figure]: text };
  }
  if (Object.keys(value).length === 0)
    report({ code: "lesson.emptyExpectation", place: document.place(path), part: "text", expected: "is, contains" });
  return outcome;
}

function readVolts(value: unknown, path: Path, { document, parts, declared, report }: Around): Expectation | null {
  const place = document.place(path);
  if (!isMapping(value)) {
    report({ code: "document.wrongType", place, path: path.join("."), expected: "mapping", found: String(value) });
    return null;
  }
  const known = ["at", "is", "tolerance"];
  for (const figure of Object.keys(value))
    if (!known.includes(figure)) reportFigure("volts", figure, known, [...path, figure], document, report);
  for (const field of ["at", "is"])
    if (!(field in value)) report({ code: "document.missingField", place, path: [...path, field].join("."), field });
  if (!("at" in value) || !("is" in value)) return null;
  const at = readLeg(String(value.at), parts, declared, document.place([...path, "at"]), report);
  const is = readQuantity(value.is, "is", rules.is!, document.place([...path, "is"]), report);
  const tolerance = readTolerance(value, path, document, report);
  return at === null || is === null || tolerance === null ? null : { kind: "volts", at, is, tolerance };
}

function readPartExpectation(written: string, value: unknown, path: Path, around: Around): Expectation | null {
  const { document, parts, declared, report } = around;
  const point = written.indexOf(".");
  const name = point === -1 ? written : written.slice(0, point);
  const light = point === -1 ? undefined : written.slice(point + 1);
  const part = parts.get(name);
  if (!part) {
    const known = [...parts.keys(), "text", "volts"];
    if (!declared.has(name))
      report({ code: "lesson.noSuchPart", place: document.namePlace(path), found: name.slice(0, 40), near: near(name, known) });
    return null;
  }
  const noticed = catalogue.get(part.kind)!.noticed(part.values);
  if (noticed.length === 0) {
    report({ code: "lesson.nothingToNotice", place: document.namePlace(path), part: name });
    return null;
  }
  const element = chooseLight(name, light, noticed, path, around);
  if (element === null) return null;
  const sense = noticed[0]!.sense;
  const figures = figuresOf[sense];
  const words = sense === "angle" ? ["90 degrees"] : seenWords[sense];
  const base = { kind: "part" as const, part: name, ...(element === "" ? {} : { element }) };
  if (!isMapping(value)) {
    const degrees = /^(.+?)\s*(?:degrees?|°)$/.exec(String(value))?.[1];
    if (sense === "angle" && degrees !== undefined) {
      const read = readQuantity(degrees, "degrees", rules.degrees!, document.place(path), report);
      return read === null ? null : { ...base, seen: null, degrees: read, tolerance: usualTolerance };
    }
    const seen = readSeen(name, value, words, path, around);
    return seen === null ? null : { ...base, seen, tolerance: usualTolerance };
  }
  const known = [...(sense === "angle" ? [] : ["seen"]), ...figures, "tolerance"];
  const out: { seen: string | null; hertz?: number; duty?: number; degrees?: number } = { seen: null };
  let isWhole = true;
  for (const [figure, found] of Object.entries(value)) {
    const place = document.place([...path, figure]);
    if (!known.includes(figure)) {
      reportFigure(name, figure, known, [...path, figure], document, report);
      isWhole = false;
    } else if (figure === "seen") {
      out.seen = readSeen(name, found, words, [...path, figure], around);
      if (out.seen === null) isWhole = false;
    } else if (figure !== "tolerance") {
      const read = readQuantity(found, figure, rules[figure]!, place, report);
      if (read === null) isWhole = false;
      else out[figure as "hertz" | "duty" | "degrees"] = read;
    }
  }
  const tolerance = readTolerance(value, path, document, report);
  if (isWhole && out.seen === null && !figures.some((figure) => figure in value)) {
    report({ code: "lesson.emptyExpectation", place: document.place(path), part: name, expected: known.join(", ") });
    return null;
  }
  return isWhole && tolerance !== null ? { ...base, ...out, tolerance } : null;
}

/** @returns which light is meant, "" where a part has only one sense, or null after reporting what is wrong. */
function chooseLight(
  part: string,
  light: string | undefined,
  noticed: readonly Noticing[],
  path: Path,
  { document, report }: Around,
): string | null {
  const lights = noticed.flatMap((n) => (n.sense === "light" && n.element !== undefined ? [n.element] : []));
  const place = document.namePlace(path);
  if (lights.length === 0) {
    if (light === undefined) return "";
    report({ code: "lesson.unknownLight", place, part, found: light.slice(0, 40), near: null, expected: "" });
    return null;
  }
  if (light === undefined) {
    report({ code: "lesson.lightMissing", place, part, expected: lights.join(", ") });
    return null;
  }
  if (lights.includes(light)) return light;
  report({
    code: "lesson.unknownLight",
    place,
    part,
    found: light.slice(0, 40),
    near: near(light, lights),
    expected: lights.join(", "),
  });
  return null;
}

function readSeen(
  part: string,
  value: unknown,
  words: readonly string[],
  path: Path,
  { document, report }: Around,
): string | null {
  if (typeof value === "string" && words.includes(value) && value !== "90 degrees") return value;
  const found = String(value).slice(0, 40);
  report({
    code: "lesson.unknownExpectation",
    place: document.place(path),
    part,
    found,
    near: near(found, words),
    expected: words.join(", "),
  });
  return null;
}

function readTolerance(value: Figures, path: Path, document: Document, report: Report): number | null {
  if (!("tolerance" in value)) return usualTolerance;
  return readQuantity(value.tolerance, "tolerance", rules.tolerance!, document.place([...path, "tolerance"]), report);
}

function reportFigure(
  part: string,
  figure: string,
  known: readonly string[],
  path: Path,
  document: Document,
  report: Report,
): void {
  report({
    code: "lesson.unknownFigure",
    place: document.namePlace(path),
    part,
    found: figure.slice(0, 40),
    near: near(figure, known),
    expected: known.join(", "),
  });
}
