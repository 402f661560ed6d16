// The corners of the tolerances: no table as chance makes it is worse than the worst of them, on random circuits and in our
// lessons. Where a figure can be worked out by hand, the corner is the one that the formula names.
import { describe, expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { seededRandom } from "../../base/index.ts";
import { cableOhms } from "../parts/index.ts";
import { makeBuild } from "./build.ts";
import { circuitShelf } from "./circuitShelf.ts";
import { type Corner, choiceAt, figuresOf, findCorners, sampleCorners, statesOf } from "./corners.ts";
import { ourLesson, smallLesson } from "./lesson.fixture.ts";
import { programPlayer } from "./programPlayer.ts";
import { rehearseBuild } from "./rehearseBuild.ts";
import { strongSupply } from "./rehearseOnce.ts";
import { verdicts } from "./result.ts";
import { setTable } from "./table.ts";

/** Resistors and LEDs between the 5 V net, ground, a pin that drives, an analog input and a few nodes, as chance has it. */
function randomLesson(seed: number) {
  const random = seededRandom(seed, "corners");
  const nodes = ["board.5V", "board.GND", "board.D9", "board.A0", "n1", "n2", "n3"];
  const legs = new Map<string, string[]>(nodes.map((n) => [n, n.startsWith("board") ? [n] : []]));
  const parts: string[] = [];
  const place = (name: string, text: string, ends: [string, string], a: string, b: string) => {
    parts.push(`${name}: ${text}`);
    legs.get(a)?.push(`${name}.${ends[0]}`);
    legs.get(b)?.push(`${name}.${ends[1]}`);
  };
  const resistor = (a: string, b: string) => {
    const ohms = Math.round(100 * 10 ** (2 * random.next()));
    const share = random.int(1, 20) / 100;
    place(`R${parts.length}`, `{ part: resistor, ohms: ${ohms}, tolerance: ${share * 100}%, watts: 9 }`, ["1", "2"], a, b);
  };
  // A tree first, so that every node is held; then bridges across it.
  for (const [i, node] of nodes.entries()) if (i > 1) resistor(node, nodes[random.int(0, i - 1)] as string);
  for (let i = 0; i < 4; i += 1) {
    const a = random.int(0, nodes.length - 1);
    const b = (a + random.int(1, nodes.length - 1)) % nodes.length;
    resistor(nodes[a] as string, nodes[b] as string);
  }
  for (let i = 0; i < random.int(1, 2); i += 1) {
    const colour = ["red", "yellow", "green", "blue"][random.int(0, 3)];
    place(
      `LED${i}`,
      `{ part: led, colour: ${colour} }`,
      ["anode", "cathode"],
      ["board.D9", "n1"][i] as string,
      ["n2", "board.GND"][i] as string,
    );
  }
  return smallLesson(
    parts.join("\n"),
    [...legs.values()]
      .filter((l) => l.length > 1)
      .map((l) => l.join(" "))
      .join("\n"),
    "{ at: 500ms, expect: { board: running } }",
    "void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); } void loop() { delay(10); }",
  );
}

test("no random table drives a figure beyond the corners, on random circuits", () => {
  let [figuresSeen, tables] = [0, 0];
  for (let seed = 1; seed <= sample(40, 1000); seed += 1) {
    const lesson = randomLesson(seed);
    const { build } = makeBuild(lesson, { supply: strongSupply });
    const { player } = programPlayer(lesson);
    if (!build || !player) throw new Error(`seed ${seed} cannot be built`);
    const shelf = circuitShelf();
    const run = rehearseBuild(build, { player, shelf, seed: 1 }).runs[0]!;
    const choice = { supply: strongSupply };
    const tableAt = (corner: Corner) => setTable(makeBuild(lesson, choiceAt(choice, corner.values)).build!, shelf);
    const corners = findCorners(build, choice, run, shelf).map(tableAt);
    const figures = figuresOf(build, statesOf(run));
    // None may have been left out for their number.
    expect(corners.length).toBeLessThan(40);
    const bounds = figures.map((f) => {
      const values = [setTable(build, shelf), ...corners].map(f.value);
      return [Math.min(...values), Math.max(...values)] as const;
    });
    for (const corner of sampleCorners(build, 20, seed)) {
      const table = tableAt(corner);
      tables += 1;
      for (const [i, figure] of figures.entries()) {
        const [least, most] = bounds[i] as readonly [number, number];
        const value = figure.value(table);
        // 1 µA is a fiftieth of the least light that anybody sees, a millionth of the supply less than a step of the converter.
        const slack = 1e-6 + 1e-6 * Math.abs(value);
        expect(value, `seed ${seed}, ${figure.name}, ${corner.corner}`).toBeGreaterThan(least - slack);
        expect(value, `seed ${seed}, ${figure.name}, ${corner.corner}`).toBeLessThan(most + slack);
        figuresSeen += 1;
      }
    }
  }
  expect(tables).toBeGreaterThan(500);
  expect(figuresSeen).toBeGreaterThan(tables * 3);
});

describe("in our lessons no table as chance makes it does worse than the corners", () => {
  for (const id of ["lighthouse", "signal-lamp", "quay-lights", "quay-lamp-at-dusk", "dimmer", "barrier", "water-temperature"])
    test(id, () => {
      const lesson = ourLesson(id);
      const choice = { supply: strongSupply };
      const { build } = makeBuild(lesson, choice);
      const { player } = programPlayer(lesson);
      if (!build || !player) throw new Error(`${id} cannot be built`);
      const bench = { player, shelf: circuitShelf(), seed: 1 };
      const rank = (corner: Corner) =>
        verdicts.indexOf(rehearseBuild(makeBuild(lesson, choiceAt(choice, corner.values)).build!, bench).verdict);
      const run = rehearseBuild(build, bench).runs[0]!;
      const worst = Math.min(...findCorners(build, choice, run, bench.shelf).map(rank));
      for (const corner of sampleCorners(build, sample(12, 300), 7))
        expect(rank(corner), corner.corner).toBeGreaterThanOrEqual(worst);
    });
});

test("the dimmest lamp: weak port, long thin cable, old fuse, tired pin, high resistor, high forward voltage", () => {
  const lesson = ourLesson("lighthouse");
  const { build } = makeBuild(lesson);
  const { player } = programPlayer(lesson);
  const run = rehearseBuild(build!, { player: player!, shelf: circuitShelf(), seed: 1 }).runs[0]!;
  const corners = findCorners(build!, {}, run);
  const dimmest = corners.find((c) => c.corner.startsWith("least LED1.amps"));
  expect(dimmest?.values).toEqual({
    // USB 2.0: 4.75 V; MF-MSMF050: 1 Ω; ATmega328P, table 29-1: 40 Ω; IEC 60062: gold, +5 %; ASMT-QTB4: 2.40 V.
    "board.supplyVolts": 4.75,
    "board.fuseOhms": 1,
    "board.outputOhms": 40,
    "board.cableOhms": cableOhms(1.8, 28),
    "R1.ohms": 231,
    "LED1.volts": 2.4,
  });
});

// Ω by ASTM B258 and IEC 60028: 1 m of AWG 28 has 0.2129 Ω (wire tables), AWG 24 0.0842 Ω, AWG 20 0.0333 Ω.
for (const [metres, awg, ohms] of [
  [1, 28, 2 * 0.2129 + 0.12],
  [1, 24, 2 * 0.0842 + 0.12],
  [1.8, 28, 2 * 1.8 * 0.2129 + 0.12],
  [0.3, 20, 2 * 0.3 * 0.0333 + 0.12],
] as const)
  test(`a cable of ${metres} m, AWG ${awg}: ${ohms.toFixed(3)} Ω`, () => expect(cableOhms(metres, awg)).toBeCloseTo(ohms, 3));
