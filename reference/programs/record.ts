// Compiles and runs every program on the chip and keeps what the driver printed. Run by `npm run reference -- --record programs`.
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { recordingDate, sha256, toolVersion } from "../tools.ts";
import { type Case, cases, refusedPrograms } from "./cases.ts";
import { command, inputLines, openChip } from "./chip.ts";

export interface Recording {
  readonly tool: string;
  readonly version: string;
  readonly command: string;
  readonly date: string;
  /** Of the reference board and the driver: another board is another recording. */
  readonly board: string;
  readonly programs: Record<string, { readonly input: string; readonly output: string; readonly printed: string }>;
  /** What the compiler says first of programs that we refuse. */
  readonly refused: Record<string, { readonly input: string; readonly error: string }>;
}

/** All that the chip's answer depends on, beside the board. */
export function inputHash(c: Case): string {
  return sha256(`${c.text}\n${c.ms}\n${inputLines(c.inputs)}`);
}

/** @param folder reference/programs. */
export function boardHash(folder: string): string {
  const files = [
    ...readdirSync(`${folder}/core`)
      .sort()
      .map((f) => `core/${f}`),
    "driver.c",
  ];
  return sha256(files.map((f) => `${f}\n${readFileSync(`${folder}/${f}`, "utf8")}`).join("\n"));
}

/** What the same board and compiler printed before, by program: only what is new or changed is run. */
function recordedBefore(folder: string): Recording["programs"] {
  if (!existsSync(`${folder}/recorded.json`)) return {};
  const before = JSON.parse(readFileSync(`${folder}/recorded.json`, "utf8")) as Recording;
  const isSame = before.board === boardHash(folder) && before.version === toolVersion("avr-g++") && before.command === command;
  return isSame ? before.programs : {};
}

/** Writes recorded.json from the project's root. */
export async function record(): Promise<void> {
  const folder = "reference/programs";
  const chip = openChip(folder);
  const programs: Recording["programs"] = {};
  const known = recordedBefore(folder);
  const refused: Recording["refused"] = {};
  try {
    for (const c of cases("")) {
      const before = known[c.name];
      const isKnown = before !== undefined && before.input === inputHash(c) && sha256(before.printed) === before.output;
      const printed = isKnown ? before.printed : chip.run(c.text, c.ms, c.inputs, c.flag);
      programs[c.name] = { input: inputHash(c), output: sha256(printed), printed };
    }
    for (const [name, text] of refusedPrograms("")) refused[name] = { input: sha256(text), error: chip.refusal(text) };
  } finally {
    chip.close();
  }
  const recording: Recording = {
    tool: "avr-g++ and simavr (libsimavr)",
    version: toolVersion("avr-g++"),
    command,
    date: recordingDate,
    board: boardHash(folder),
    programs,
    refused,
  };
  writeFileSync(`${folder}/recorded.json`, `${JSON.stringify(recording, null, 1)}\n`);
}
