// Programs with what they must do written on the line: one trap each.
//
//   Serial.println(7 / 2);   // expect: 3                      the next line of text
//   digitalwrite(1, HIGH);   // expect problem: program.unknownName name=digitalwrite
//   list[5] = 1;             // expect broken: program.indexOutside 5 5
//   // expect pins: D9 high 0, D9 low 500                      every change, in ms, ±1
//   // run 500 ms            // inputs [{"ms": 5, "pin": "D2", "level": "low"}]
//
// "at 7" names another line. Expected values come from the C++11 standard, the chip's data sheet and avr-gcc; the same programs
// are compiled with avr-gcc and run in simavr in reference/programs, so that no value here rests on our own run.
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type Inputs, parseProgram, readInputs, runWithInputs } from "../../src/bench/program/index.ts";
import { readExpectations } from "./readExpectations.ts";

const folder = new URL(".", import.meta.url).pathname;
const names = readdirSync(folder).filter((name) => name.endsWith(".cpp"));

test("there are at least ninety programs", () => expect(names.length).toBeGreaterThanOrEqual(90));

for (const name of names) {
  test(name, () => {
    const text = readFileSync(folder + name, "utf8");
    const wanted = readExpectations(text);
    const read = parseProgram(name, text);
    expect(read.problems.map((p) => `${p.place?.line ?? 0} ${p.code}`).sort()).toEqual(
      wanted.problems.map((p) => `${p.line} ${p.code}`).sort(),
    );
    for (const p of wanted.problems) {
      const found = read.problems.find((k) => k.code === p.code && k.place?.line === p.line);
      for (const [field, value] of p.data)
        expect(`${field}=${(found as Record<string, unknown>)[field]}`).toBe(`${field}=${value}`);
    }
    const forbidden = read.problems.some((p) => p.severity !== "warning");
    expect(read.value === null).toBe(forbidden);
    if (read.value === null) return;
    const run = runWithInputs(read.value, inputsOf(wanted.inputs), wanted.ms, { seed: 7, mostWork: 20 * 16e6 });
    expect(run.lines.map((l) => l.text)).toEqual(wanted.lines);
    const ended = run.problems.map((p) => `${p.place?.line} ${p.code} ${"values" in p ? p.values.join(" ") : ""}`.trim());
    if (wanted.broken === null) expect(ended).toEqual([]);
    else expect(ended[0]).toContain(`${wanted.broken.line} ${wanted.broken.code}`);
    if (wanted.broken?.values) expect(ended[0]).toBe(`${wanted.broken.line} ${wanted.broken.code} ${wanted.broken.values}`);
    for (const [what, list] of wanted.logs) {
      const got =
        what === "pins"
          ? run.pins.map((p) => [`${p.pin} ${p.level}`, p.ms] as const)
          : what === "modes"
            ? run.modes.map((p) => [`${p.pin} ${p.mode}`, p.ms] as const)
            : what === "pwm"
              ? run.pwm.map((p) => [`${p.pin} ${p.value}`, p.ms] as const)
              : what === "servos"
                ? run.servos.map((p) => [`${p.pin} ${p.degrees ?? "off"}`, p.ms] as const)
                : run.tones.flatMap(
                    (t) =>
                      [
                        [`${t.pin} ${t.hz}`, t.ms],
                        [`${t.pin} ${t.hz} end`, t.endMs ?? -1],
                      ] as const,
                  );
      expect(got.map(([g]) => g)).toEqual(list.map((w) => w.what));
      for (const [i, [, ms]] of got.entries()) expect(Math.abs(ms - list[i]!.ms), `${what} ${i}`).toBeLessThanOrEqual(1);
    }
  });
}

function inputsOf(json: string): Inputs {
  const read = readInputs("inputs", json);
  expect(read.problems).toEqual([]);
  return read.value ?? [];
}
