// Runs the decks of the traced lessons with the real ngspice and keeps what it measured. Run by `npm run reference -- --record traces`.
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import type { Recording } from "../circuits/record.ts";
import { recordingDate, sha256, toolVersion } from "../tools.ts";
import { tracedLessons } from "./lessons.ts";

/** @returns the lines NAME = VALUE of a deck's measurements. */
export function measure(path: string): string {
  const { stdout } = spawnSync("ngspice", ["-b", path], { encoding: "utf8" });
  return stdout
    .split("\n")
    .flatMap((line) => /^([a-z]+\d+)\s+=\s+(\S+)/.exec(line)?.slice(1, 3).join(" = ") ?? [])
    .join("\n");
}

/** Writes recorded.json from the project's root. */
export async function record(): Promise<void> {
  const folder = "reference/traces";
  const decks: Recording["decks"] = {};
  for (const { deck } of tracedLessons) {
    const path = `${folder}/decks/${deck}.cir`;
    const printed = measure(path);
    if (printed === "") throw new Error(`ngspice measured nothing in ${deck}`);
    decks[deck] = { input: sha256(readFileSync(path, "utf8")), output: sha256(printed), printed };
  }
  const recording: Recording = {
    tool: "ngspice",
    version: toolVersion("ngspice"),
    command: "ngspice -b decks/NAME.cir, lines NAME = VALUE of meas",
    date: recordingDate,
    decks,
  };
  writeFileSync(`${folder}/recorded.json`, `${JSON.stringify(recording, null, 2)}\n`);
}
