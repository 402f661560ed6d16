// Runs every deck with the real ngspice and keeps what it printed. Run by `npm run reference -- --record circuits`.
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { recordingDate, sha256, toolVersion } from "../tools.ts";

export interface Recording {
  readonly tool: string;
  readonly version: string;
  readonly command: string;
  readonly date: string;
  readonly decks: Record<string, { readonly input: string; readonly output: string; readonly printed: string }>;
}

/** Decks by name, with their text. */
export function readDecks(folder: string): Map<string, string> {
  const files = readdirSync(folder).filter((file) => file.endsWith(".cir"));
  return new Map(files.sort().map((file) => [file.replace(".cir", ""), readFileSync(`${folder}/${file}`, "utf8")]));
}

/** @returns the lines with results that ngspice prints for one deck; its notes on the way there vary. */
export function runNgspice(path: string): string {
  const { stdout } = spawnSync("ngspice", ["-b", path], { encoding: "utf8" });
  return stdout
    .split("\n")
    .filter((line) => /^\S+ = \S+$/.test(line))
    .join("\n");
}

/** Writes recorded.json from the project's root. */
export async function record(): Promise<void> {
  const folder = "reference/circuits";
  const decks: Recording["decks"] = {};
  for (const [name, text] of readDecks(`${folder}/decks`)) {
    const printed = runNgspice(`${folder}/decks/${name}.cir`);
    if (printed === "") throw new Error(`ngspice printed nothing for ${name}`);
    decks[name] = { input: sha256(text), output: sha256(printed), printed };
  }
  const recording: Recording = {
    tool: "ngspice",
    version: toolVersion("ngspice"),
    command: "ngspice -b decks/NAME.cir, lines NAME = VALUE",
    date: recordingDate,
    decks,
  };
  writeFileSync(`${folder}/recorded.json`, `${JSON.stringify(recording, null, 2)}\n`);
}
