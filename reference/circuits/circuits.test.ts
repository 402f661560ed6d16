// Every deck solved by us and by ngspice: all node voltages and source currents to 1e-6, or 1 nV and 1 pA.
//
// ngspice's answers are recorded (record.ts); where ngspice is installed they are derived again.
import { expect, test } from "vitest";
import { solveDc } from "../../src/bench/circuit/index.ts";
import { hasTool, sha256, toolVersion } from "../tools.ts";
import { readDeck, readPrinted } from "./readDeck.ts";
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

test("a wrong answer would be noticed", () => {
  const printed = (recorded.decks["red-led"]?.printed ?? "").replace("1.73361", "1.73362");
  expect(differences("red-led", printed)).toHaveLength(1);
});

const derive = process.env.REQUIRE_TOOLS || hasTool("ngspice") ? test : test.skip;
derive("derived again by ngspice", () => {
  expect(toolVersion("ngspice")).toBe(recorded.version);
  for (const name of decks.keys()) expect(differences(name, runNgspice(`${folder}/${name}.cir`)), name).toEqual([]);
});
