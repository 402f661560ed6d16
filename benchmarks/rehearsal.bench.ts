// A lesson rehearsed once, and with all its values, corners and margins, against ngspice with one process for each operating point.
//
// Whoever wants to know today whether a lesson works with other resistors draws the circuit of each state and has a circuit
// simulator solve it. Here the same circuits are handed to ngspice: those of the lesson's states, as our own table makes them.
// Processor time is compared, not the clock. Ours runs the program besides, and says what is seen and stressed; ngspice does not.
// Goals: 1 s for a lesson with all its variants in one worker, 20 ms as written, and a fifth of the processes' time.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { hasTool } from "../reference/tools.ts";
import { finish } from "../src/base/index.ts";
import type { Element } from "../src/bench/circuit/index.ts";
import { type Lesson, readLesson } from "../src/bench/lesson/index.ts";
import { makeBuild } from "../src/bench/rehearsal/build.ts";
import { circuitShelf } from "../src/bench/rehearsal/circuitShelf.ts";
import { programPlayer } from "../src/bench/rehearsal/programPlayer.ts";
import { rehearseOn } from "../src/bench/rehearsal/rehearse.ts";
import { rehearseBuild } from "../src/bench/rehearsal/rehearseBuild.ts";
import { strongSupply } from "../src/bench/rehearsal/rehearseOnce.ts";

interface Row {
  name: string;
  ours: string;
  reference: string;
  ratio: number | null;
  goal: string;
  met: boolean | null;
}

/** What a class may hold of the kinds that the lessons use. */
const items = ["180", "220", "270", "330", "470", "1k", "4k7", "10k", "22k", "100k"]
  .map((ohms) => `resistor ${ohms}`)
  .concat(["red", "yellow", "green", "blue", "white"].map((colour) => `led ${colour}`));

/** Every kind of supply that a class may have. */
const supplies = [
  strongSupply,
  "usb-port 500mA",
  "usb-port 900mA",
  "adapter 1000mA",
  "power-bank",
  "battery-9v",
  "battery-4aa alkaline",
  "battery-4aa nimh",
];

const median = (values: number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] as number;

function load(id: string): Lesson {
  const folder = `lessons/${id}`;
  const read = (path: string) => {
    try {
      return readFileSync(`${folder}/${path}`, "utf8");
    } catch {
      return null;
    }
  };
  const list = (path: string) => {
    try {
      return readdirSync(`${folder}/${path}`);
    } catch {
      return [];
    }
  };
  const { value } = readLesson({ folder, read, list });
  if (!value) throw new Error(`${id} cannot be read`);
  return value;
}

/** Processor time of a piece of work in ms, the middle of several runs after one to warm up. */
function timed(work: () => void, runs: number): number {
  work();
  return median(
    Array.from({ length: runs }, () => {
      const before = process.cpuUsage();
      work();
      const { user, system } = process.cpuUsage(before);
      return (user + system) / 1000;
    }),
  );
}

/** The elements of a state as ngspice reads them. Names are numbered: a point in a name means something else there. */
function deckOf(elements: Iterable<Element>): string {
  const nodes = new Map<string, number>([["0", 0]]);
  const node = (name: string) => {
    if (!nodes.has(name)) nodes.set(name, nodes.size);
    return nodes.get(name);
  };
  let deck = "state of a table\n";
  let count = 0;
  for (const e of elements) {
    count += 1;
    if (e.kind === "resistor") deck += `R${count} ${node(e.a)} ${node(e.b)} ${e.ohms}\n`;
    else if (e.kind === "capacitor") deck += `C${count} ${node(e.a)} ${node(e.b)} ${e.farads}\n`;
    else if (e.kind === "diode") {
      deck += `D${count} ${node(e.anode)} ${node(e.cathode)} M${count}\n`;
      deck += `.model M${count} D(IS=${e.saturationAmps} N=${e.emission} RS=${e.seriesOhms})\n`;
    } else if (e.kind === "limitedSource") {
      deck += `V${count} inner${count} ${node(e.minus)} ${e.volts}\nRI${count} inner${count} ${node(e.plus)} ${e.ohms}\n`;
    } else throw new Error(`no deck for ${e.kind}`);
  }
  return `${deck}.options temp=27 tnom=27\n.control\nop\nprint all\n.endc\n.end\n`;
}

/** Processor time of one ngspice process that solves a deck, ms. */
function processTime(path: string, deck: string): number {
  writeFileSync(path, deck);
  const once = () => {
    const { stderr } = spawnSync("bash", ["-c", `TIMEFORMAT='cpu %U %S'; time ngspice -b ${path} > ${path}.out`], {
      encoding: "utf8",
    });
    const [, user, system] = /cpu (\S+) (\S+)/.exec(stderr) ?? [];
    return 1000 * (Number(user) + Number(system));
  };
  once();
  return median(Array.from({ length: 7 }, once));
}

export async function run(): Promise<Row[]> {
  const rows: Row[] = [];
  const folder = mkdtempSync(join(tmpdir(), "rehearsal-"));
  for (const id of [
    "lighthouse",
    "signal-lamp",
    "quay-lights",
    "quay-lamp-at-dusk",
    "dimmer",
    "barrier",
    "water-temperature",
    "foghorn",
  ]) {
    const lesson = load(id);
    const { player } = programPlayer(lesson);
    const { build } = makeBuild(lesson, { supply: strongSupply });
    if (!player || !build) throw new Error(`${id} cannot be built`);
    let solves = 0;
    let elements: readonly Element[] = [];
    const nominal = timed(() => {
      const shelf = circuitShelf();
      const done = rehearseBuild(build, { player, shelf, seed: 1 });
      solves = shelf.solves;
      elements = [...(done.runs[0]?.segments.at(-1)?.scene.phases[0]?.point.elements.values() ?? [])];
    }, 7);
    let allSolves = 0;
    let variants = 0;
    const whole = timed(() => {
      const shelf = circuitShelf();
      const result = finish(rehearseOn(lesson, { player, shelf, seed: 1 }, { items, supplies, margins: true }));
      allSolves = shelf.solves;
      variants = result.variants.length;
    }, 3);
    const each = hasTool("ngspice") ? processTime(join(folder, "state.cir"), deckOf(elements)) : null;
    const row = (name: string, ours: number, points: number, most: number, goalMs: number): Row => {
      const reference = each === null ? null : each * points;
      const ratio = reference === null ? null : ours / reference;
      return {
        name: `${id}: ${name}`,
        ours: `${ours.toFixed(1)} ms`,
        reference:
          reference === null
            ? "ngspice is not here"
            : `${points} processes of ${each?.toFixed(0)} ms: ${(reference / 1000).toFixed(1)} s`,
        ratio,
        goal: `≤ ${most} and ≤ ${goalMs} ms`,
        met: ratio === null ? null : ratio <= most && ours <= goalMs,
      };
    };
    rows.push(row("as written", nominal, solves, 0.2, 20));
    rows.push(row(`${supplies.length} supplies, ${variants} variants and the margins`, whole, allSolves, 0.2, 1000));
  }
  rmSync(folder, { recursive: true, force: true });
  return rows;
}
