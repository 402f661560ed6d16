// The inputs of a run: a JSON list of what happens at the pins, and when.
//
//   [{"ms": 100, "pin": "D2", "level": "low"}, {"ms": 0, "pin": "A0", "value": 512}, {"ms": 500, "text": "on\n"}]
//
// Does not know: the program.
import * as v from "valibot";
import { checkShape, near, type Reading, readJson, sortProblems } from "../../base/index.ts";
import { pinNames, pinNumber } from "./pinName.ts";
import type { PinNumber } from "./port.ts";
import type { ProgramProblem } from "./problems.ts";

export type Input =
  | { readonly ms: number; readonly pin: PinNumber; readonly level: "low" | "high" }
  /** What the converter gives, 0..1023, for pins 14..19. */
  | { readonly ms: number; readonly pin: PinNumber; readonly value: number }
  /** Sent to the board, from this moment on, character by character. */
  | { readonly ms: number; readonly text: string };

/** By time; equal times in the order of the file. */
export type Inputs = readonly Input[];

const ms = v.pipe(v.number(), v.minValue(0));
const shape = v.array(
  v.union([
    v.strictObject({ ms, pin: v.string(), level: v.picklist(["low", "high"]) }),
    v.strictObject({ ms, pin: v.string(), value: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1023)) }),
    v.strictObject({ ms, text: v.string() }),
  ]),
);

/** @returns the inputs, sorted by time, or everything that is wrong with the file. */
export function readInputs(file: string, text: string): Reading<Inputs, ProgramProblem> {
  const document = readJson(file, text);
  if (document.value === null) return { value: null, problems: document.problems };
  const given = document.value;
  const shaped = checkShape(given, shape);
  if (shaped.value === null) return { value: null, problems: shaped.problems };
  const problems: ProgramProblem[] = [...document.problems];
  const inputs: Input[] = [];
  shaped.value.forEach((entry, i) => {
    if ("text" in entry) {
      inputs.push(entry);
      return;
    }
    const pin = pinNumber(entry.pin);
    const place = given.place([i, "pin"]);
    if (pin === null) problems.push({ code: "program.unknownPin", place, pin: entry.pin, near: near(entry.pin, pinNames) });
    else if ("value" in entry && pin < 14) problems.push({ code: "program.inputNotAnalog", place, pin: entry.pin });
    else inputs.push("level" in entry ? { ms: entry.ms, pin, level: entry.level } : { ms: entry.ms, pin, value: entry.value });
  });
  if (problems.some((p) => p.severity !== "warning")) return { value: null, problems: sortProblems(problems) };
  return { value: inputs.sort((a, b) => a.ms - b.ms), problems };
}
