// Compiles a program for the chip with avr-g++ and runs it in simavr.
//
// The class's flags (-Os, C++11 with GNU's additions); the board's functions come from core/. Everything is made in a folder of
// its own below the system's temporary one and taken away again.
// Does not know: our own reader and machine.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Inputs } from "../../src/bench/program/index.ts";
import { hasTool } from "../tools.ts";
import { withPrototypes } from "./withPrototypes.ts";

const flags = [
  ..."-std=gnu++11 -Os -mmcu=atmega328p -DF_CPU=16000000UL -ffunction-sections -fdata-sections -fno-exceptions -w".split(" "),
];
/** As it stands in the recordings. */
export const command = `avr-g++ ${flags.join(" ")}; driver PROGRAM.elf CYCLES < inputs (driver.c, libsimavr)`;

/** gcc builds the driver that simavr's library is linked to. */
export const neededTools = ["avr-g++", "simavr", "gcc"];
export const haveTools = (): boolean => neededTools.every(hasTool);

/** What C++ leaves undefined, an overflow of signed numbers, wraps as the chip's own arithmetic does. For random programs. */
export const wrapping = "-fwrapv";

export interface Chip {
  /** @returns what the driver printed. Throws what the compiler said. */
  run(text: string, ms: number, inputs: Inputs, flag?: string): string;
  /** Builds only; for measuring. @returns the program's path, and the driver's. Throws what the compiler said. */
  build(text: string, flag?: string): { readonly elf: string; readonly driver: string };
  /** @returns the first error of the compiler as "line: words", or "" if it takes the program. Nothing is linked. */
  refusal(text: string): string;
  close(): void;
}

/** @param folder reference/programs, where core/ and driver.c lie. */
export function openChip(folder: string): Chip {
  const made = mkdtempSync(join(tmpdir(), "chip-"));
  const must = (name: string, args: readonly string[]) => {
    const done = spawnSync(name, args, { encoding: "utf8" });
    if (done.status !== 0) throw new Error(`${name}: ${done.stderr}`);
  };
  const core = ["board", "text", "words", "servo", "stepper"];
  for (const part of core)
    must("avr-g++", [...flags, `-I${folder}/core`, "-c", `${folder}/core/${part}.cpp`, "-o", `${made}/${part}.o`]);
  must("gcc", ["-O2", "-o", `${made}/driver`, `${folder}/driver.c`, "-lsimavr"]);
  const build = (text: string, flag?: string) => {
    writeFileSync(`${made}/program.cpp`, withPrototypes(text));
    const elf = `${made}/program.elf`;
    must("avr-g++", [
      ...flags,
      ...(flag ? [flag] : []),
      `-I${folder}/core`,
      "-c",
      `${made}/program.cpp`,
      "-o",
      `${made}/program.o`,
    ]);
    const objects = ["program", ...core].map((part) => `${made}/${part}.o`);
    must("avr-g++", ["-Os", "-mmcu=atmega328p", "-Wl,--gc-sections", "-o", elf, ...objects, "-lm"]);
    return { elf, driver: `${made}/driver` };
  };
  return {
    build,
    run: (text, ms, inputs, flag) => {
      const { elf, driver } = build(text, flag);
      const done = spawnSync(driver, [elf, String(ms * 16000)], {
        input: inputLines(inputs),
        encoding: "utf8",
        maxBuffer: 1 << 28,
      });
      return done.stdout.replace(/^Loaded .*\n/gm, "");
    },
    refusal: (text) => {
      writeFileSync(`${made}/refused.cpp`, withPrototypes(text));
      const args = [...flags, `-I${folder}/core`, "-fsyntax-only", `${made}/refused.cpp`];
      const { stderr } = spawnSync("avr-g++", args, { encoding: "utf8", env: { ...process.env, LC_ALL: "C" } });
      const error = /^(\S+?):(\d+):\d+: (?:fatal )?error: (.*)$/m.exec(stderr);
      if (error === null) return "";
      return `${error[1]!.endsWith("refused.cpp") ? error[2] : "header"}: ${error[3]}`;
    },
    close: () => rmSync(made, { recursive: true, force: true }),
  };
}

/**
 * The driver's input: times in cycles, voltages in mV, text character by character at 9600 baud. simavr's converter counts 1023
 * steps where the data sheet counts 1024, so the voltage is the one that gives the value there; it takes a character in when its
 * first bit would begin and hands it over when its last has come.
 */
export function inputLines(inputs: Inputs): string {
  const rows: { at: number; row: string }[] = [];
  for (const input of inputs) {
    const at = Math.round(input.ms * 16000);
    if ("text" in input)
      for (const [i, c] of [...input.text].entries()) rows.push({ at: at + i * 16667, row: `T ${c.charCodeAt(0)} 0` });
    else if ("level" in input) rows.push({ at, row: `L ${input.pin} ${input.level === "high" ? 1 : 0}` });
    else {
      rows.push({ at, row: `V ${input.pin - 14} ${Math.ceil((input.value * 5000) / 1023)}` });
      rows.push({ at, row: `L ${input.pin} ${input.value >= 512 ? 1 : 0}` });
    }
  }
  rows.sort((a, b) => a.at - b.at);
  return rows.map((r) => `${r.at} ${r.row}\n`).join("");
}
