// The programs that are run on the chip and by us: those of the lessons, of test/programs, of books/, and timings of their own.
//
// Left out are programs that do not compile or that must break off (the chip would go on with garbage), and a few that hang on
// what the chip does not fix; each with its reason. Those of books/ were written as beginners' books have them, before anybody
// looked whether they run here.
// Does not know: how they are run.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { type Inputs, parseProgram, readInputs } from "../../src/bench/program/index.ts";
import { readExpectations } from "../../test/programs/readExpectations.ts";

import { wrapping } from "./chip.ts";
import { randomProgram } from "./randomPrograms.ts";

export interface Case {
  readonly name: string;
  /** Path from the project's root. */
  readonly file: string;
  readonly text: string;
  readonly ms: number;
  readonly inputs: Inputs;
  /** A further flag for the compiler. */
  readonly flag?: string;
}

/** How many random programs are recorded. */
const randomOnes = 40;

const leftOut: Readonly<Record<string, string>> = {
  "serial-overflow.cpp": "the driver hands over all characters at 9600 baud, the chip listens at 115200",
  "serial-blocks.cpp": "simavr takes 11 bits for a character where the data sheet has 10",
  "delay-in-int.cpp": "a minute of simavr's time shows nothing more",
  "int-clock-flickers.cpp": "half a minute of simavr's time; the switch is at the same moment",
  "analog-number-is-a-pin.cpp": "digitalRead of a voltage in the middle is undefined on the chip",
  "tone-scale-button.cpp":
    "a tone that is begun anew every ten milliseconds has edges of its own on the chip; it is heard as one",
};

/** What the lessons' programs are fed with: keys are pressed, it gets dark and bright again. */
const lessonInputs: Readonly<Record<string, { readonly ms: number; readonly inputs: string }>> = {
  "signal-lamp": {
    ms: 3000,
    inputs:
      '[{"ms":0,"pin":"D2","level":"high"},{"ms":500,"pin":"D2","level":"low"},{"ms":900,"pin":"D2","level":"high"},{"ms":1500,"pin":"D2","level":"low"},{"ms":1700,"pin":"D2","level":"high"}]',
  },
  "quay-lamp-at-dusk": {
    ms: 3000,
    inputs:
      '[{"ms":0,"pin":"A0","value":700},{"ms":700,"pin":"A0","value":400},{"ms":1300,"pin":"A0","value":100},{"ms":2100,"pin":"A0","value":800}]',
  },
  barrier: {
    ms: 8000,
    inputs: '[{"ms":0,"pin":"D2","level":"high"},{"ms":1000,"pin":"D2","level":"low"},{"ms":1200,"pin":"D2","level":"high"}]',
  },
  lighthouse: { ms: 12000, inputs: "[]" },
  "quay-lights": { ms: 5500, inputs: "[]" },
  foghorn: {
    ms: 4000,
    inputs: '[{"ms":0,"pin":"D2","level":"high"},{"ms":500,"pin":"D2","level":"low"},{"ms":1700,"pin":"D2","level":"high"}]',
  },
  dimmer: {
    ms: 2000,
    inputs:
      '[{"ms":0,"pin":"A0","value":0},{"ms":400,"pin":"A0","value":512},{"ms":900,"pin":"A0","value":1023},{"ms":1500,"pin":"A0","value":3}]',
  },
  "ferry-fan": {
    ms: 4500,
    inputs: '[{"ms":0,"pin":"D2","level":"high"},{"ms":500,"pin":"D2","level":"low"},{"ms":900,"pin":"D2","level":"high"}]',
  },
  // 400 steps down; what the chip needs for the code between two of them adds up.
  crane: {
    ms: 1500,
    inputs: '[{"ms":0,"pin":"D2","level":"high"},{"ms":300,"pin":"D2","level":"low"},{"ms":600,"pin":"D2","level":"high"}]',
  },
  // Nothing answers: each shot waits 30 ms in vain.
  "tide-gauge": { ms: 1200, inputs: '[{"ms":0,"pin":"D8","level":"low"}]' },
  "whole-harbour": {
    ms: 6000,
    inputs:
      '[{"ms":0,"pin":"A0","value":800},{"ms":0,"pin":"D2","level":"high"},{"ms":800,"pin":"A0","value":100},{"ms":2000,"pin":"D2","level":"low"},{"ms":2300,"pin":"D2","level":"high"}]',
  },
  // 20 °C, 35 °C, and a wire that is missing.
  "water-temperature": {
    ms: 4500,
    inputs: '[{"ms":0,"pin":"A0","value":454},{"ms":1500,"pin":"A0","value":619},{"ms":3500,"pin":"A0","value":1023}]',
  },
};

/** @param root the project's folder, with a slash at its end. */
export function cases(root: string): Case[] {
  return [
    ...lessonCases(root),
    ...folderCases(root, "test/programs"),
    ...folderCases(root, "reference/programs/books"),
    ...folderCases(root, "reference/programs/timings"),
    ...randomCases(),
  ];
}

function randomCases(): Case[] {
  return Array.from({ length: randomOnes }, (_, i) => randomCase(i + 1));
}

export function randomCase(seed: number): Case {
  const text = randomProgram(seed);
  return { name: `random ${seed}`, file: "reference/programs/randomPrograms.ts", text, ms: 300, inputs: [], flag: wrapping };
}

function lessonCases(root: string): Case[] {
  return readdirSync(`${root}lessons`)
    .filter((lesson) => existsSync(`${root}lessons/${lesson}/program.cpp`))
    .map((lesson) => {
      const file = `lessons/${lesson}/program.cpp`;
      const { ms, inputs } = lessonInputs[lesson] ?? { ms: 3000, inputs: "[]" };
      return { name: `lesson ${lesson}`, file, text: readFileSync(root + file, "utf8"), ms, inputs: inputsFrom(inputs) };
    });
}

function folderCases(root: string, folder: string): Case[] {
  return readdirSync(`${root}${folder}`)
    .filter((name) => name.endsWith(".cpp") && leftOut[name] === undefined)
    .flatMap((name) => {
      const file = `${folder}/${name}`;
      const text = readFileSync(root + file, "utf8");
      const wanted = readExpectations(text);
      if (wanted.broken !== null || parseProgram(name, text).value === null) return [];
      return [
        {
          name: name.replace(".cpp", folder.endsWith("timings") ? " (time)" : ""),
          file,
          text,
          ms: wanted.ms,
          inputs: inputsFrom(wanted.inputs),
        },
      ];
    });
}

/** Programs of test/programs that we refuse, by name. Those that the reference board cannot judge are left out. */
export function refusedPrograms(root: string): Map<string, string> {
  const files = readdirSync(`${root}test/programs`).filter((name) => name.endsWith(".cpp"));
  const texts = files.map((name) => [name, readFileSync(`${root}test/programs/${name}`, "utf8")] as const);
  return new Map(texts.filter(([name, text]) => !/\bServo\b/.test(text) && parseProgram(name, text).value === null));
}

function inputsFrom(json: string): Inputs {
  return readInputs("inputs", json).value ?? [];
}
