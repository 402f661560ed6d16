// A lesson rehearsed once, and with all its values, corners and margins, against ngspice with one process for each operating point.
//
// Whoever wants to know today whether a lesson works with other resistors draws the circuit of each state and has a circuit
// simulator solve it. Here the same circuits are handed to ngspice: those of the lesson's states, as our own table makes them.
// Processor time is compared, not the clock. Ours runs the program besides, and says what is seen and stressed; ngspice does not.
// Goals: 1 s for a lesson with all its variants in one worker, 20 ms as written, and a fifth of the processes' time.
//
// Small lessons whose circuits remember are rehearsed as well, with all corners, values at hand and samples: their goal is 1 s too. And
// 100 ms of PWM into a capacitor, as a waveform of a whole lesson, is held against ngspice on the same circuit, net of its start.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { hasTool } from "../reference/tools.ts";
import { tracedLessons } from "../reference/traces/lessons.ts";
import { finish } from "../src/base/index.ts";
import type { Element } from "../src/bench/circuit/index.ts";
import { type Lesson, readLesson } from "../src/bench/lesson/index.ts";
import { makeBuild } from "../src/bench/rehearsal/build.ts";
import { circuitShelf } from "../src/bench/rehearsal/circuitShelf.ts";
import { smallLesson } from "../src/bench/rehearsal/lesson.fixture.ts";
import { programPlayer } from "../src/bench/rehearsal/programPlayer.ts";
import { rehearseOn } from "../src/bench/rehearsal/rehearse.ts";
import { rehearseBuild } from "../src/bench/rehearsal/rehearseBuild.ts";
import { strongSupply } from "../src/bench/rehearsal/rehearseOnce.ts";
import { traceLesson } from "../src/bench/rehearsal/traceLesson.ts";

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
  rows.push(...rememberingRows(), ...waveformRows(folder));
  rmSync(folder, { recursive: true, force: true });
  return rows;
}

const rc = `R1: { part: resistor, ohms: 10k }
C1: { part: capacitor, farads: 10u }`;
const rcNets = `board.D9 R1.1
R1.2 C1.1 board.A0
C1.2 board.GND`;

/** Name, parts, nets, rehearsal, program. */
const remembering: readonly (readonly [string, string, string, string, string])[] = [
  [
    "a program that measures R·C",
    rc,
    rcNets,
    "{ at: 2s, expect: { text: { contains: ms } } }",
    `void setup() { Serial.begin(9600); pinMode(9, OUTPUT); }
     void loop() { digitalWrite(9, LOW); delay(600); unsigned long b = micros(); digitalWrite(9, HIGH); while (analogRead(A0) < 647) {}
       Serial.print((micros() - b) / 1000); Serial.println(" ms"); delay(300); }`,
  ],
  [
    "a low-pass behind PWM",
    rc,
    rcNets,
    "{ at: 900ms, expect: { volts: { at: C1.1, is: 2.5, tolerance: 20% } } }\n{ at: 3s, expect: { board: running } }",
    `void setup() { Serial.begin(9600); pinMode(9, OUTPUT); }
     void loop() { analogWrite(9, 128); delay(1000); Serial.println(analogRead(A0)); analogWrite(9, 64); delay(500); }`,
  ],
  [
    "a lamp that fades out",
    `R1: { part: resistor, ohms: 220 }
     C1: { part: electrolytic, farads: 1000u }
     R2: { part: resistor, ohms: 470 }
     LED1: { part: led, colour: red }`,
    `board.D9 R1.1
     R1.2 C1.plus R2.1
     R2.2 LED1.anode
     LED1.cathode C1.minus board.GND`,
    "{ at: 1900ms, expect: { LED1: lit } }\n{ at: 6s, expect: { board: running } }",
    "void setup() { pinMode(9, OUTPUT); } void loop() { digitalWrite(9, HIGH); delay(2000); digitalWrite(9, LOW); delay(1500); }",
  ],
  [
    "a fan behind a transistor with PWM",
    `M1: { part: dc-motor }
     Q1: { part: npn, type: PN2222A }
     R1: { part: resistor, ohms: 470 }
     D1: { part: diode, type: 1N4007 }`,
    `board.D9 R1.1
     R1.2 Q1.base
     Q1.emitter board.GND
     board.5V M1.1 D1.cathode
     M1.2 Q1.collector D1.anode`,
    "{ at: 1s, expect: { M1: turning } }\n{ at: 3s, expect: { board: running } }",
    "void setup() { pinMode(9, OUTPUT); } void loop() { analogWrite(9, 200); delay(1500); digitalWrite(9, LOW); delay(1000); }",
  ],
  [
    "a button with its capacitor",
    `B1: { part: button }
     R1: { part: resistor, ohms: 10k }
     R3: { part: resistor, ohms: 220 }
     C1: { part: capacitor, farads: 4.7u }
     R2: { part: resistor, ohms: 220 }
     LED1: { part: led, colour: red }`,
    `board.5V R1.1
     R1.2 board.D2 R3.1 C1.1
     R3.2 B1.1
     C1.2 B1.2 LED1.cathode board.GND
     board.D9 R2.1
     R2.2 LED1.anode`,
    `{ at: 500ms, set: { B1.pressed: true } }
     { at: 1s, expect: { LED1: lit } }
     { at: 1500ms, set: { B1.pressed: false } }
     { at: 2s, expect: { LED1: dark } }`,
    "void setup() { pinMode(2, INPUT); pinMode(9, OUTPUT); } void loop() { digitalWrite(9, digitalRead(2) == LOW); }",
  ],
];

function rememberingRows(): Row[] {
  return remembering.map(([name, parts, nets, rehearsal, program]) => {
    const lesson = smallLesson(parts, nets, rehearsal, program);
    const { player } = programPlayer(lesson);
    if (!player) throw new Error(`${name} does not compile`);
    const all = [...items, "capacitor 1u", "capacitor 4u7", "capacitor 10u", "capacitor 100n"];
    let variants = 0;
    let verdict = "";
    const whole = timed(() => {
      const bench = { player, shelf: circuitShelf(), seed: 1 };
      const result = finish(rehearseOn(lesson, bench, { items: all, supplies: [strongSupply] }));
      variants = result.variants.length;
      verdict = result.verdict;
    }, 3);
    const { build } = makeBuild(lesson, { supply: strongSupply });
    if (!build) throw new Error(`${name} cannot be built`);
    const once = timed(() => rehearseBuild(build, { player, shelf: circuitShelf(), seed: 1 }), 7);
    return {
      name: `followed over time: ${name}, ${variants} variants (${verdict})`,
      ours: `${whole.toFixed(0)} ms; ${once.toFixed(1)} ms as written`,
      reference: "–",
      ratio: null,
      goal: "≤ 1000 ms",
      met: whole <= 1000,
    };
  });
}

/** Program and circuit from reset on, against the same circuit in ngspice; what a process of it takes to start is taken off. */
function waveformRows(folder: string): Row[] {
  return tracedLessons.slice(0, 2).map(({ deck, lesson, probe }) => {
    const ours = timed(() => traceLesson(lesson, { probes: [probe], fromMs: 0, toMs: 100, mostPoints: 100_000 }), 7);
    const text = readFileSync(`reference/traces/decks/${deck}.cir`, "utf8");
    const solved = hasTool("ngspice") ? processTime(join(folder, "wave.cir"), text) : null;
    const start = hasTool("ngspice")
      ? processTime(join(folder, "start.cir"), text.replace("100m 0 1u", "1u 0 1u").replace(/^meas .*$/gm, ""))
      : null;
    const reference = solved === null || start === null ? null : solved - start;
    const ratio = reference === null ? null : ours / reference;
    return {
      name: `waveform of 100 ms of PWM: ${deck}`,
      ours: `${ours.toFixed(1)} ms`,
      reference:
        reference === null ? "ngspice is not here" : `ngspice net of its start, steps of 1 µs: ${reference.toFixed(0)} ms`,
      ratio,
      goal: "≤ 0.5",
      met: ratio === null ? null : ratio <= 0.5,
    };
  });
}
