// Reads the rehearsal of a lesson: what is set from outside, and what is expected, each with its moment.
//
// Does not know: how expectations are written (readExpectation.ts), how they are judged.
import { near, type Path } from "../../base/index.ts";
import { catalogue } from "../parts/index.ts";
import type { Check, Stimulus, StimulusStep, When } from "./lesson.ts";
import type { LessonShape } from "./lessonSchema.ts";
import { type Around, readExpectation } from "./readExpectation.ts";
import { readQuantity, readWord } from "./readValue.ts";

type StepShape = LessonShape["rehearsal"][number];

/** s. Nobody rehearses longer than an hour; it keeps a slip such as 1000s for 1000ms from costing one. */
const longest = 3600;

export function readRehearsal(
  shapes: LessonShape["rehearsal"],
  around: Around,
): { readonly stimuli: readonly StimulusStep[]; readonly checks: readonly Check[] } {
  const stimuli: StimulusStep[] = [];
  const checks: Check[] = [];
  for (const [i, step] of shapes.entries()) {
    const path = ["rehearsal", i];
    const place = around.document.place(path);
    if (Object.keys(step.set ?? {}).length + Object.keys(step.expect ?? {}).length === 0) {
      around.report({ code: "lesson.emptyStep", place });
      continue;
    }
    const when = readWhen(step, path, around);
    const set = Object.entries(step.set ?? {}).flatMap(([name, value]) => {
      const stimulus = readStimulus(name, value, [...path, "set", name], around);
      return stimulus ? [stimulus] : [];
    });
    if (when && set.length > 0) stimuli.push({ at: when.kind === "throughout" ? when.from : when.at, stimuli: set, place });
    for (const [name, value] of Object.entries(step.expect ?? {})) {
      const at = [...path, "expect", name];
      const expectation = readExpectation(name, value, at, around);
      if (when && expectation) checks.push({ when, expectation, place: around.document.namePlace(at) });
    }
  }
  // A stable sort: what is set at one moment keeps the order of the file.
  return { stimuli: stimuli.sort((a, b) => a.at - b.at), checks };
}

/** @returns when the step is, or null after reporting what is wrong. */
function readWhen(step: StepShape, path: Path, { document, report }: Around): When | null {
  const place = document.place(path);
  const hasAt = step.at !== undefined;
  const hasSpan = step.from !== undefined || step.to !== undefined;
  if (!hasAt && !hasSpan) {
    report({ code: "lesson.timeMissing", place });
    return null;
  }
  const isWhole = step.from !== undefined && step.to !== undefined;
  if ((hasAt && hasSpan) || (hasSpan && (!isWhole || step.within !== undefined)) || (hasSpan && step.set !== undefined)) {
    report({ code: "lesson.timesMixed", place });
    return null;
  }
  const read = (field: "at" | "within" | "from" | "to"): number | null => {
    const at = document.place([...path, field]);
    const value = step[field];
    const rule = { unit: "s", bare: null, least: Number.NEGATIVE_INFINITY, most: longest } as const;
    const seconds = readQuantity(value, field, rule, at, report);
    if (seconds === null || seconds >= 0) return seconds;
    report({ code: "lesson.beforeStart", place: at, found: String(value) });
    return null;
  };
  if (!hasAt) {
    const from = read("from");
    const to = read("to");
    if (from === null || to === null) return null;
    if (from <= to) return { kind: "throughout", from, to };
    report({
      code: "lesson.endsBeforeItBegins",
      place: document.place([...path, "to"]),
      from: String(step.from),
      to: String(step.to),
    });
    return null;
  }
  const at = read("at");
  if (step.within === undefined) return at === null ? null : { kind: "at", at };
  const within = read("within");
  return at === null || within === null ? null : { kind: "within", at, within };
}

/** @returns what is set, or null after reporting what is wrong. */
function readStimulus(name: string, value: unknown, path: Path, { document, parts, declared, report }: Around): Stimulus | null {
  const place = document.place(path);
  if (name === "text") {
    if (typeof value === "string") return { kind: "text", text: value };
    report({ code: "document.wrongType", place, path: path.join("."), expected: "text", found: String(value) });
    return null;
  }
  if (name === "supply") {
    const word = typeof value === "boolean" ? (value ? "on" : "off") : readWord(value, name, ["on", "off"], {}, place, report);
    return word === null ? null : { kind: "supply", on: word === "on" };
  }
  const point = name.indexOf(".");
  const partName = point === -1 ? name : name.slice(0, point);
  const part = parts.get(partName);
  if (!part) {
    if (declared.has(partName)) return null;
    const states = [...parts.values()].flatMap((p) => Object.keys(catalogue.get(p.kind)!.states).map((s) => `${p.name}.${s}`));
    const known = point === -1 ? ["text", "supply", ...states] : states;
    report({
      code: "lesson.unknownStimulus",
      place: document.namePlace(path),
      found: name.slice(0, 40),
      near: near(name, known),
    });
    return null;
  }
  const { states } = catalogue.get(part.kind)!;
  const state = point === -1 ? "" : name.slice(point + 1);
  const spec = Object.hasOwn(states, state) ? states[state] : undefined;
  if (!spec) {
    const known = Object.keys(states).filter((s) => states[s]?.inner === undefined);
    report({
      code: "lesson.unknownState",
      place: document.namePlace(path),
      part: partName,
      found: state.slice(0, 40),
      near: near(state, known),
      expected: known.join(", "),
    });
    return null;
  }
  if (spec.inner) {
    report({ code: "lesson.stateIsInner", place: document.namePlace(path), part: partName, state });
    return null;
  }
  if (spec.unit === "yes-no") {
    if (typeof value === "boolean") return { kind: "state", part: partName, state, value };
    const word = readWord(value, state, ["true", "false"], { yes: "true", no: "false", on: "true", off: "false" }, place, report);
    return word === null ? null : { kind: "state", part: partName, state, value: word === "true" };
  }
  const least = spec.least ?? Number.NEGATIVE_INFINITY;
  const most = spec.most ?? Number.POSITIVE_INFINITY;
  const isPosition = spec.unit === "position";
  const rule = { unit: spec.unit === "position" ? "1" : spec.unit, bare: spec.unit === "%" ? null : 1, least, most } as const;
  const read = readQuantity(value, state, rule, place, report);
  if (read === null) return null;
  if (isPosition && !Number.isInteger(read)) {
    report({ code: "lesson.notAQuantity", place, name: state, expected: `${least} … ${most}`, found: String(value) });
    return null;
  }
  return { kind: "state", part: partName, state, value: read };
}
