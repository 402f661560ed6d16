// Our runs beside those of the chip: the same programs, compiled by avr-g++ and run in simavr instruction by instruction.
//
// Text must be equal to the letter. Changes of pins agree within a millisecond, servos within one of their 20 ms; pitches within
// a hundredth. How long a piece of work takes is an estimate with us: half of the programs in timings/ within 8 %, four in five
// within 15 %.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type InputRun, parseProgram, runWithInputs } from "../../src/bench/program/index.ts";
import { isLong } from "../../test/sample.ts";
import { sha256 } from "../tools.ts";
import { type Case, cases, randomCase, refusedPrograms } from "./cases.ts";
import { haveTools, neededTools, openChip } from "./chip.ts";
import { type ChipRun, readPrinted } from "./readPrinted.ts";
import { boardHash, inputHash, type Recording } from "./record.ts";

const folder = new URL(".", import.meta.url).pathname.replace(/\/$/, "");
const root = `${folder}/../../`;
const recording = JSON.parse(readFileSync(`${folder}/recorded.json`, "utf8")) as Recording;
const all = cases(root);
const isTiming = (c: Case) => c.file.includes("/timings/");

test("all programs are recorded, with this board", () => {
  expect(Object.keys(recording.programs)).toEqual(all.map((c) => c.name));
  expect(recording.board, "the reference board changed since it was recorded").toBe(boardHash(folder));
  expect(all.filter((c) => c.file.startsWith("lessons/")).length).toBeGreaterThanOrEqual(4);
  expect(all.length).toBeGreaterThanOrEqual(100);
});

function runOurs(c: Case): InputRun {
  const read = parseProgram(c.file, c.text);
  expect(read.value, JSON.stringify(read.problems)).not.toBeNull();
  return runWithInputs(read.value!, c.inputs, c.ms);
}

function chipRun(printed: string, ours: InputRun): ChipRun {
  return readPrinted(printed, new Set(ours.tones.map((t) => t.pin)), new Set(ours.servos.map((s) => s.pin)));
}

for (const c of all)
  test(`${c.name} as on the chip`, () => {
    const { input, output, printed } = recording.programs[c.name]!;
    expect(inputHash(c), "the program changed since it was recorded").toBe(input);
    expect(sha256(printed)).toBe(output);
    const ours = runOurs(c);
    const theirs = chipRun(printed, ours);
    expect(ours.problems).toEqual([]);
    expect(ours.text).toBe(theirs.text);
    const isSilent = (pin: string) => !ours.tones.some((t) => t.pin === pin) && !ours.servos.some((s) => s.pin === pin);
    const pins = ours.pins.filter((p) => isSilent(p.pin));
    expect(pins.map((p) => `${p.pin} ${p.level}`)).toEqual(theirs.pins.map((p) => `${p.pin} ${p.level}`));
    if (!isTiming(c))
      for (const [i, p] of pins.entries())
        expect(Math.abs(p.ms - theirs.pins[i]!.ms), `${p.pin} ${p.level} at ${p.ms}`).toBeLessThan(1);
    compareTones(ours, theirs);
    compareServos(ours, theirs);
    // Levels 0 and 255 are no pulses on the chip, and a pin without a compare unit has levels only.
    const pulses = ours.pwm
      .filter((p) => p.value > 0 && p.value < 255 && ["D3", "D5", "D6", "D9", "D10", "D11"].includes(p.pin))
      // A value that comes back after a level was never out of the chip's register.
      .filter((p, i, all) => p.value !== all[i - 1]?.value || p.pin !== all[i - 1]?.pin);
    expect(pulses.map((p) => `${p.pin} ${p.value}`)).toEqual(theirs.pwm.map((p) => `${p.pin} ${p.value}`));
    for (const [i, p] of pulses.entries()) expect(Math.abs(p.ms - theirs.pwm[i]!.ms)).toBeLessThan(1);
  });

/** A tone that is replaced within two of its turns cannot be told from the chip's pins. */
function compareTones(ours: InputRun, theirs: ChipRun): void {
  const tones = ours.tones.filter((t) => (t.endMs ?? ours.ms) - t.ms > 2000 / t.hz);
  expect(tones.map((t) => t.pin)).toEqual(theirs.tones.map((t) => t.pin));
  tones.forEach((t, i) => {
    const chip = theirs.tones[i]!;
    expect(Math.abs(t.hz / chip.hz - 1)).toBeLessThan(0.01);
    expect(Math.abs(t.ms - chip.ms)).toBeLessThan(1);
    expect(Math.abs((t.endMs ?? ours.ms) - chip.endMs)).toBeLessThan(1 + 1000 / t.hz);
  });
}

/** The chip sends a new width with the next pulse. */
function compareServos(ours: InputRun, theirs: ChipRun): void {
  const written = ours.servos.filter((s) => s.degrees !== null);
  expect(written.length).toBe(theirs.servos.length);
  written.forEach((s, i) => {
    const chip = theirs.servos[i]!;
    expect(Math.abs(544 + Math.trunc((s.degrees! * 1856) / 180) - chip.micros), `${s.degrees} degrees`).toBeLessThan(8);
    expect(chip.ms - s.ms).toBeGreaterThan(-1);
    expect(chip.ms - s.ms).toBeLessThan(21);
  });
}

test("work takes about as long as on the chip", () => {
  const errors = all.filter(isTiming).map((c) => {
    const ours = runOurs(c);
    const length = (pins: readonly { ms: number; pin: string }[]) => {
      const [from, to] = pins.filter((p) => p.pin === "D13");
      return to!.ms - from!.ms;
    };
    return Math.abs(length(ours.pins) / length(chipRun(recording.programs[c.name]!.printed, ours).pins) - 1);
  });
  errors.sort((a, b) => a - b);
  expect(errors.length).toBeGreaterThanOrEqual(25);
  expect(errors[errors.length >> 1]).toBeLessThan(0.08);
  expect(errors.filter((e) => e < 0.15).length / errors.length).toBeGreaterThanOrEqual(0.8);
});

/**
 * Where GCC looks elsewhere than a person should: it names the macro's definition instead of its use, the private field instead
 * of who reached for it, and a label behind our first feature that is not run.
 */
const elsewhere = [
  "define-with-equals.cpp",
  "macro-semicolon.cpp",
  "missing-comma.cpp",
  "private-field.cpp",
  "not-supported.cpp",
];
/** What only the linker, or nobody, says in class. */
const ofOurs = ["program.missingFunction", "program.missingBody", "program.memoryNeeded", "program.notSupported"];

const refusedTexts = refusedPrograms(root);
test("every program that we refuse is recorded", () => expect(Object.keys(recording.refused)).toEqual([...refusedTexts.keys()]));
for (const [name, text] of refusedTexts)
  test(`${name} is refused where avr-g++ refuses it`, () => {
    const { input, error } = recording.refused[name]!;
    expect(sha256(text), "the program changed since it was recorded").toBe(input);
    const problems = parseProgram(name, text).problems.filter((p) => p.severity !== "warning");
    if (problems.every((p) => ofOurs.includes(p.code))) return;
    const first = [...problems].sort((a, b) => a.place!.line - b.place!.line || a.place!.column - b.place!.column)[0]!;
    expect(error).not.toBe("");
    if (elsewhere.includes(name)) return;
    // avr-g++ 5.4 names the line where it noticed, we the one where the mark is missing; both are in the problem.
    const lines = [first.place!.line, "foundLine" in first ? first.foundLine : 0];
    expect(lines).toContain(Number(error.split(":")[0]));
  });

/** A few are derived again in every run; in the long one all of them, and 400 random programs beside. */
const again = isLong
  ? [...all, ...Array.from({ length: 400 }, (_, i) => randomCase(1001 + i))]
  : all.filter((_, i) => i % 19 === 0);
const derive = () => {
  const chip = openChip(folder);
  try {
    for (const [name, text] of [...refusedTexts].filter((_, i) => isLong || i % 10 === 0))
      expect(chip.refusal(text), name).toBe(recording.refused[name]!.error);
    for (const c of again) {
      const printed = chip.run(c.text, c.ms, c.inputs, c.flag);
      const recorded = recording.programs[c.name];
      if (recorded) expect(printed, c.name).toBe(recorded.printed);
      else expect(runOurs(c).text, c.text).toBe(readPrinted(printed, new Set(), new Set()).text);
    }
  } finally {
    chip.close();
  }
};
const name = `${neededTools.join(", ")}: the recordings are what the chip does`;
if (haveTools()) test(name, derive);
else if (process.env.REQUIRE_TOOLS) test(name, () => expect.fail(`missing: ${neededTools.join(", ")}`));
else test.skip(name, derive);
