// Runs every deck with the real ngspice and keeps what it printed. Run by `npm run reference -- --record circuits`.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { nodesOf } from "../../src/bench/circuit/index.ts";
import { recordingDate, sha256, toolVersion } from "../tools.ts";
import { type Deck, readDeck } from "./readDeck.ts";

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

/**
 * @returns what ngspice has to say about a deck: at an operating point the lines NAME = VALUE (its notes on the way there
 * vary); over time a table of the instants of the .tran line, node voltages and coil currents.
 */
export function runNgspice(path: string): string {
  const text = readFileSync(path, "utf8");
  const deck = readDeck(text);
  if (deck.tran) return runTransient(text, deck);
  const { stdout } = spawnSync("ngspice", ["-b", path], { encoding: "utf8" });
  return stdout
    .split("\n")
    .filter((line) => /^\S+ = \S+$/.test(line))
    .join("\n");
}

function runTransient(text: string, deck: Deck): string {
  const { netlist } = deck;
  const nodes = [...new Set(netlist.elements.flatMap(nodesOf))].filter((node) => node !== "0");
  const coils = netlist.elements.filter(({ kind }) => kind === "inductor").map(({ id }) => id);
  const vectors = [...nodes.map((node) => `v(${node})`), ...coils.map((id) => `i(${id})`)];
  const folder = mkdtempSync(join(tmpdir(), "deck-"));
  // Between its own steps ngspice draws straight lines; the decks keep those steps short.
  const control = `set wr_singlescale\nset numdgt=9\nrun\nlinearize\nwrdata ${folder}/out ${vectors.join(" ")}`;
  writeFileSync(`${folder}/deck.cir`, text.replace(/^\.end$/m, `.control\n${control}\n.endc\n.end`));
  const { stdout, stderr } = spawnSync("ngspice", ["-b", `${folder}/deck.cir`], { encoding: "utf8" });
  if (/abort/.test(stdout + stderr)) throw new Error(`ngspice gave up: ${deck.title}`);
  const rows = readFileSync(`${folder}/out`, "utf8").trim().split("\n");
  rmSync(folder, { recursive: true });
  const numbers = rows.map((row) =>
    row
      .trim()
      .split(/\s+/)
      .map((word) => String(Number(Number(word).toPrecision(7)))),
  );
  return [["s", ...vectors], ...numbers].map((row) => row.join(" ")).join("\n");
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
    command: "ngspice -b decks/NAME.cir, lines NAME = VALUE; with .tran: run, linearize, wrdata (record.ts)",
    date: recordingDate,
    decks,
  };
  writeFileSync(`${folder}/recorded.json`, `${JSON.stringify(recording, null, 2)}\n`);
}
