// Runs every table's deck with the real ngspice and keeps what it printed. Run by `npm run reference -- --record tables`.
import { writeFileSync } from "node:fs";
import { type Recording, readDecks, runNgspice } from "../circuits/record.ts";
import { recordingDate, sha256, toolVersion } from "../tools.ts";

/** Writes recorded.json from the project's root. */
export async function record(): Promise<void> {
  const folder = "reference/tables";
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
