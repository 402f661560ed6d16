// One part changed and the circuit solved again, against ngspice's built-in sweep: what a variation of a lesson costs.
//
// The circuit: k cells of pin, 4.7 kΩ, NPN base; its collector, an LED and a resistor on one supply of 0.3 Ω; 4k + 2 nodes.
// ngspice's sweep starts every point from the last one as we do, so it is the honest peer; its start is subtracted. Processor
// time is compared, not the clock, and both sides take turns, because other work may share the machine. ngspice's script loop
// (alter, op) is what its user would write; the last rows follow the circuit through 100 ms of 490 Hz edges.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readDeck } from "../reference/circuits/readDeck.ts";
import { hasTool } from "../reference/tools.ts";
import { prepareCircuit, solveTransient } from "../src/bench/circuit/index.ts";

interface Row {
  name: string;
  ours: string;
  reference: string;
  ratio: number | null;
  goal: string;
  met: boolean | null;
}

const models = ".model led d(is=1e-20 n=1.8 rs=8)\n.model npn npn(is=1e-14 bf=200)\n";
const exact = ".options temp=27 tnom=27 reltol=1e-10 abstol=1e-15 vntol=1e-12\n";

function cells(count: number): string {
  let deck = "vs s 0 5\nrs s r 0.3\n";
  for (let i = 1; i <= count; i += 1) {
    deck += `vp${i} p${i} 0 dc ${i % 3 ? 5 : 0}\nrb${i} p${i} b${i} 4.7k\nq${i} c${i} b${i} 0 npn\n`;
    deck += `rl${i} r a${i} ${180 + i * 10}\nd${i} a${i} c${i} led\n`;
  }
  return deck + models;
}

const median = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1] as number;

/** Processor time of a sweep over rl1 in ms, as the shell counts it, and what was printed. */
function runNgspice(path: string, deck: string, control: string): { ms: number; out: string } {
  writeFileSync(path, `cells\n${deck}.control\n${control}\n.endc\n.end\n`);
  const { stdout, stderr } = spawnSync("bash", ["-c", `TIMEFORMAT='cpu %U %S'; time ngspice -b ${path}`], { encoding: "utf8" });
  const [, user, system] = /cpu (\S+) (\S+)/.exec(stderr) ?? [];
  return { ms: 1000 * (Number(user) + Number(system)), out: stdout };
}

/** Processor time of as many solves in ms, after as many to warm up. */
function sweep(circuit: ReturnType<typeof prepareCircuit>, points: number): number {
  const before = process.cpuUsage();
  for (let k = 0; k < points; k += 1) {
    circuit.setValue("rl1", "ohms", 180 + k);
    if (circuit.settle() !== "solved") return Number.NaN;
  }
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** @returns the largest difference of a node voltage at five points of the sweep, V. */
function largestDifference(path: string, deck: string, circuit: ReturnType<typeof prepareCircuit>, count: number): number {
  const nodes = Array.from({ length: count }, (_, k) => [`b${k + 1}`, `c${k + 1}`, `a${k + 1}`]).flat();
  let largest = 0;
  for (const ohms of [180, 333, 1000, 4700, 20_000]) {
    const printed = runNgspice(path, deck + exact, `set numdgt=12\nalter rl1 = ${ohms}\nop\nprint all`).out;
    circuit.setValue("rl1", "ohms", ohms);
    circuit.settle();
    for (const node of nodes) {
      const theirs = Number(new RegExp(`^${node} = (\\S+)$`, "m").exec(printed)?.[1]);
      largest = Math.max(largest, Math.abs(theirs - circuit.now.volts(node)));
    }
  }
  return largest;
}

/** The same cells, the first of which is driven by 490 Hz and has 100 nF at its collector, or has not. */
function pulsedCells(count: number, remembers: boolean): string {
  const pulse = "vp1 p1 0 pulse(0 5 0 1u 1u 1.02m 2.040816m)";
  return cells(count).replace("vp1 p1 0 dc 5", `${pulse}${remembers ? "\ncf c1 0 100n" : ""}`);
}

const untilSeconds = 0.1;
/** Enough for the waveform to stay within the 1 mV that is asked for. */
const accuracy = 3e-5;

/** Processor time of 100 ms in ms, the best of as many runs as one needs to see it. */
function follow(deck: string): number {
  const { netlist } = readDeck(`cells\n${deck}`);
  const before = process.cpuUsage();
  const runs = 5;
  for (let k = 0; k < runs; k += 1)
    if (solveTransient(netlist, { untilSeconds, accuracy }).status !== "solved") return Number.NaN;
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000 / runs;
}

/** @returns the largest difference of the first cell's voltages from ngspice with close tolerances, at fifty instants, V. */
function waveDifference(folder: string, deck: string): number {
  const { netlist } = readDeck(`cells\n${deck}`);
  const nodes = ["b1", "c1", "a1", "r"];
  const control = `set wr_singlescale\ntran 1.97m 100m 0 0.3u\nlinearize\nwrdata ${folder}/wave ${nodes.map((n) => `v(${n})`).join(" ")}`;
  runNgspice(join(folder, "wave.cir"), `${deck}.options reltol=1e-5 abstol=1e-12 vntol=1e-9\n`, control);
  const rows = readFileSync(join(folder, "wave"), "utf8")
    .trim()
    .split("\n")
    .map((row) => row.trim().split(/\s+/).map(Number))
    // Its last row lies beyond the end.
    .filter(([seconds = 0]) => seconds <= untilSeconds);
  const sampleSeconds = rows.map(([seconds = Number.NaN]) => seconds);
  const { samples } = solveTransient(netlist, { untilSeconds, sampleSeconds, accuracy });
  let largest = samples.length >= 50 ? 0 : Number.NaN;
  samples.forEach(({ point }, k) => {
    nodes.forEach((node, n) => {
      largest = Math.max(largest, Math.abs(point.volts(node) - (rows[k]?.[n + 1] as number)));
    });
  });
  return largest;
}

function transientRows(folder: string, withTool: boolean): Row[] {
  const rows: Row[] = [];
  for (const count of [2, 12, 50]) {
    const deck = pulsedCells(count, true);
    const ours: number[] = [];
    const theirs: number[] = [];
    follow(deck);
    for (let round = 0; round < 5; round += 1) {
      ours.push(follow(deck));
      if (!withTool) continue;
      const start = runNgspice(join(folder, "tran.cir"), deck, "op").ms;
      theirs.push(runNgspice(join(folder, "tran.cir"), deck, "tran 20u 100m").ms - start);
    }
    const mine = median(ours);
    const yours = withTool ? median(theirs) : null;
    rows.push({
      name: `100 ms with 490 Hz edges into a capacitor, ${4 * count + 2} nodes`,
      ours: `${mine.toFixed(1)} ms`,
      reference: yours === null ? "no ngspice here" : `${yours.toFixed(0)} ms of ngspice beyond its start`,
      ratio: yours === null ? null : mine / yours,
      goal: "≤ 0.5",
      met: yours === null ? null : mine <= 0.5 * yours,
    });
    if (!withTool) continue;
    const volts = waveDifference(folder, deck);
    rows.push({
      name: "the same, largest difference at 50 instants",
      ours: `${(1000 * volts).toFixed(2)} mV`,
      reference: "ngspice, reltol 1e-5",
      ratio: null,
      goal: "≤ 1 mV",
      met: volts <= 1e-3,
    });
  }
  const bare = pulsedCells(2, false);
  follow(bare);
  const ms = median(Array.from({ length: 9 }, () => follow(bare)));
  rows.push({
    name: "100 ms with 490 Hz edges and nothing that remembers, 10 nodes",
    ours: `${ms.toFixed(2)} ms`,
    reference: "–",
    ratio: null,
    goal: "≤ 1 ms",
    met: ms <= 1,
  });
  return rows;
}

export async function run(): Promise<Row[]> {
  const rows: Row[] = [];
  const folder = mkdtempSync(join(tmpdir(), "circuit-"));
  const path = join(folder, "cells.cir");
  const withTool = hasTool("ngspice");
  for (const count of [2, 12, 50]) {
    const nodes = 4 * count + 2;
    const deck = cells(count);
    const circuit = prepareCircuit(readDeck(`cells\n${deck}`).netlist);
    const points = count === 50 ? 5000 : 20_000;
    sweep(circuit, points);
    const ours: number[] = [];
    const theirs: number[] = [];
    for (let round = 0; round < 5; round += 1) {
      ours.push((sweep(circuit, points) / points) * 1000);
      if (!withTool) continue;
      const start = runNgspice(path, deck, "dc rl1 180 180 1").ms;
      theirs.push(((runNgspice(path, deck, `dc rl1 180 ${179 + points} 1`).ms - start) / points) * 1000);
    }
    const mine = median(ours);
    const yours = withTool ? median(theirs) : null;
    rows.push({
      name: `one resistor changed, ${nodes} nodes`,
      ours: `${mine.toFixed(2)} µs`,
      reference: yours === null ? "no ngspice here" : `${yours.toFixed(2)} µs a point of ngspice's dc sweep`,
      ratio: yours === null ? null : mine / yours,
      goal: "≤ 1.0",
      met: yours === null ? null : mine <= yours,
    });
    if (withTool) {
      const loops = count === 50 ? 300 : 1000;
      const loop = (n: number) => `let i = 0\nwhile i < ${n}\nalter rl1 = 180 + i\nop\ndestroy\nlet i = i + 1\nend`;
      const spent = Array.from({ length: 3 }, () => runNgspice(path, deck, loop(loops)).ms - runNgspice(path, deck, loop(0)).ms);
      const each = (median(spent) / loops) * 1000;
      rows.push({
        name: `the same against ngspice's alter loop`,
        ours: `${mine.toFixed(2)} µs`,
        reference: `${each.toFixed(0)} µs a turn`,
        ratio: mine / each,
        goal: "≤ 0.05",
        met: mine <= 0.05 * each,
      });
      const volts = largestDifference(path, deck, circuit, count);
      const goal = "≤ 1e-6 V";
      rows.push({
        name: `the same, largest difference`,
        ours: `${volts.toExponential(1)} V`,
        reference: "ngspice",
        ratio: null,
        goal,
        met: volts <= 1e-6,
      });
    }
    if (count === 2) {
      const ms = median(Array.from({ length: 9 }, () => sweep(circuit, 1000)));
      rows.push({
        name: "1000 variations of 10 nodes",
        ours: `${ms.toFixed(1)} ms`,
        reference: "–",
        ratio: null,
        goal: "≤ 10 ms",
        met: ms <= 10,
      });
    }
    const cold = median(Array.from({ length: 50 }, () => timeCold(deck)));
    const goal = count === 2 ? "≤ 0.5 ms" : "–";
    const met = count === 2 ? cold <= 0.5 : null;
    rows.push({
      name: `netlist to first answer, ${nodes} nodes`,
      ours: `${cold.toFixed(2)} ms`,
      reference: "–",
      ratio: null,
      goal,
      met,
    });
  }
  rows.push(...transientRows(folder, withTool));
  rmSync(folder, { recursive: true });
  return rows;
}

function timeCold(deck: string): number {
  const { netlist } = readDeck(`cells\n${deck}`);
  const before = performance.now();
  prepareCircuit(netlist).settle();
  return performance.now() - before;
}
