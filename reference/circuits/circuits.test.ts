// Every deck solved by us and by ngspice: all node voltages and source currents to 1e-6, or 1 nV and 1 pA; over time to 0.5 %
// of their range.
//
// ngspice's answers are recorded (record.ts); where ngspice is installed they are derived again.
import { expect, test } from "vitest";
import { solveDc, solveTransient } from "../../src/bench/circuit/index.ts";
import { hasTool, sha256, toolVersion } from "../tools.ts";
import { type Deck, readDeck, readPrinted, type TranLine } from "./readDeck.ts";
import { type Recording, readDecks, runNgspice } from "./record.ts";
import recordedJson from "./recorded.json" with { type: "json" };

const recorded: Recording = recordedJson;
const folder = new URL("decks", import.meta.url).pathname;
const decks = readDecks(folder);

/** The larger of a share of 1e-6 and an absolute floor. */
const isNear = (ours: number, theirs: number, floor: number) =>
  Math.abs(ours - theirs) <= Math.max(1e-6 * Math.abs(theirs), floor);

function differences(name: string, printed: string): string[] {
  const deck = readDeck(decks.get(name) as string);
  if (deck.tran) return differencesInTime(deck, deck.tran, printed);
  const outcome = solveDc(deck.netlist);
  if (outcome.status !== "solved") return [outcome.status];
  const { volts, amps } = readPrinted(printed, deck);
  const wrong: string[] = [];
  let compared = 0;
  // Nodes inside devices ("d1#internal") are ngspice's own affair.
  for (const [node, theirs] of volts) {
    if (node.includes("#")) continue;
    compared += 1;
    const ours = outcome.point.volts(node);
    if (!isNear(ours, theirs, 1e-9)) wrong.push(`V(${node}) ${ours} V, ngspice ${theirs} V`);
  }
  for (const [id, theirs] of amps) {
    compared += 1;
    const ours = outcome.point.amps(id);
    if (!isNear(ours, theirs, 1e-12)) wrong.push(`I(${id}) ${ours} A, ngspice ${theirs} A`);
  }
  return compared > 0 ? wrong : ["nothing was compared"];
}

/** Every node voltage and coil current at every instant of the .tran line to 0.5 % of its range. */
function differencesInTime({ netlist }: Deck, tran: TranLine, printed: string): string[] {
  const [head = [], ...rows] = printed.split("\n").map((line) => line.split(" "));
  // With "uic" ngspice's first instant is its first step, not the start.
  const table = rows.map((row) => row.map(Number)).slice(tran.fromInitial && tran.start === 0 ? 1 : 0);
  const instants = table.map(([seconds = Number.NaN]) => seconds);
  const outcome = solveTransient(netlist, { untilSeconds: tran.stop, sampleSeconds: instants, fromInitial: tran.fromInitial });
  if (outcome.status !== "solved") return [outcome.status];
  const wrong: string[] = [];
  head.slice(1).forEach((vector, column) => {
    const theirs = table.map((row) => row[column + 1] as number);
    const range = Math.max(...theirs) - Math.min(...theirs);
    const [, kind, name = ""] = /^(v|i)\((\S+)\)$/.exec(vector) ?? [];
    outcome.samples.forEach(({ seconds, point }, k) => {
      const ours = kind === "v" ? point.volts(name) : point.amps(name);
      const off = Math.abs(ours - (theirs[k] as number));
      if (off > Math.max(5e-3 * range, 1e-9))
        wrong.push(`${vector} at ${seconds} s: ${ours}, ngspice ${theirs[k]}, range ${range}`);
    });
  });
  return table.length >= 20 && head.length > 1 ? wrong : ["nothing was compared"];
}

for (const name of decks.keys()) {
  test(`${name} as ngspice has it`, () => {
    const record = recorded.decks[name];
    expect(record?.input, "the deck has changed since it was recorded").toBe(sha256(decks.get(name) as string));
    expect(record?.output).toBe(sha256(record?.printed ?? ""));
    expect(differences(name, record?.printed ?? "")).toEqual([]);
  });
}

test("nothing is recorded for decks that are gone", () =>
  expect(Object.keys(recorded.decks).filter((name) => !decks.has(name))).toEqual([]));

test("a wrong answer over time would be noticed", () => {
  const printed = recorded.decks["rc-charge"]?.printed ?? "";
  const wrong = printed.replace(/^1 15 (\S+)$/m, (_, volts) => `1 15 ${Number(volts) + 0.1}`);
  expect(wrong).not.toBe(printed);
  expect(differences("rc-charge", wrong)).toHaveLength(1);
});

test("a wrong answer would be noticed", () => {
  const printed = (recorded.decks["red-led"]?.printed ?? "").replace("1.73361", "1.73362");
  expect(differences("red-led", printed)).toHaveLength(1);
});

const derive = process.env.REQUIRE_TOOLS || hasTool("ngspice") ? test : test.skip;
derive("derived again by ngspice", () => {
  expect(toolVersion("ngspice")).toBe(recorded.version);
  for (const name of decks.keys()) expect(differences(name, runNgspice(`${folder}/${name}.cir`)), name).toEqual([]);
});
