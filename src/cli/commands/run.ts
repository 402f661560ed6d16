// benchday run PROGRAM.cpp: the program alone, with inputs at its pins.
//
// Does not know: circuits, lessons.

import { type Inputs, parseProgram, readInputs, runWithInputs } from "../../bench/program/index.ts";
import { sayUnchecked } from "../../language/index.ts";
import { loadText, shown } from "../loadFiles.ts";
import {
  columns,
  type ExitStatus,
  print,
  printJson,
  printProblems,
  problemsAsJson,
  type SpokenProblem,
  type Talk,
} from "../output.ts";

export function runCommand(
  file: string,
  options: { readonly inputs: string | null; readonly seconds: number; readonly seed: number },
  talk: Talk,
): ExitStatus {
  const fail = (problems: readonly SpokenProblem[]): ExitStatus => {
    if (talk.json)
      printJson({
        ms: 0,
        pins: [],
        modes: [],
        pwm: [],
        tones: [],
        servos: [],
        text: "",
        lines: [],
        problems: problemsAsJson(problems),
      });
    return talk.json ? 1 : printProblems(problems, talk) || 1;
  };
  const text = loadText(file);
  if (text.value === null) return fail(text.problems);
  let inputs: Inputs = [];
  if (options.inputs !== null) {
    const given = loadText(options.inputs);
    if (given.value === null) return fail(given.problems);
    const read = readInputs(shown(options.inputs), given.value);
    if (read.value === null) return fail(read.problems);
    inputs = read.value;
  }
  const program = parseProgram(shown(file), text.value);
  if (program.value === null) return fail(program.problems);
  const run = runWithInputs(program.value, inputs, options.seconds * 1000, { seed: options.seed });
  const problems: SpokenProblem[] = [...program.problems, ...run.problems];
  if (talk.json) {
    printJson({ ...run, problems: problemsAsJson(problems) });
    return problems.some((p) => p.severity !== "warning") ? 1 : 0;
  }
  const status = printProblems(problems, talk);
  const say = (key: string, data: Record<string, unknown> = {}) => sayUnchecked(talk.language, `run.${key}`, data);
  const ms = (n: number) => n.toFixed(3);
  const rows = [
    ...run.modes.map((m) => ({ ms: m.ms, pin: m.pin, what: say("mode", { mode: m.mode }) })),
    ...run.pins.map((p) => ({ ms: p.ms, pin: p.pin, what: say("level", { level: p.level }) })),
    ...run.pwm.map((p) => ({ ms: p.ms, pin: p.pin, what: say("pwm", { value: p.value }) })),
    ...run.tones.map((x) => ({
      ms: x.ms,
      pin: x.pin,
      what: say("tone", { hertz: x.hz, until: x.endMs === null ? "–" : ms(x.endMs) }),
    })),
    ...run.servos.map((s) => ({ ms: s.ms, pin: s.pin, what: say("servo", { degrees: s.degrees ?? "–" }) })),
    ...run.lines.map((l) => ({ ms: l.ms, pin: "", what: say("text", { text: l.text }) })),
  ].sort((a, b) => a.ms - b.ms);
  if (rows.length === 0) print(say("nothing", { ms: run.ms }));
  else print(columns([[say("ms"), say("pin"), ""], ...rows.map((r) => [ms(r.ms), String(r.pin), r.what])], [0]));
  return status;
}
