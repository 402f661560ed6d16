// One part changed and the circuit solved again, against ngspice's built-in sweep: what a variation of a lesson costs.
//
// The circuit: k cells of pin, 4.7 kΩ, NPN base; its collector, an LED and a resistor on one supply of 0.3 Ω; 4k + 2 nodes.
// ngspice's sweep starts every point from the last one as we do, so it is the honest peer; its start is subtracted. Processor
// time is compared, not the clock, and both sides take turns, because other work may share the machine.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readDeck } from "../reference/circuits/readDeck.ts";
import { hasTool } from "../reference/tools.ts";
import { prepareCircuit } from "../src/bench/circuit/index.ts";

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
  rmSync(folder, { recursive: true });
  return rows;
}

function timeCold(deck: string): number {
  const { netlist } = readDeck(`cells\n${deck}`);
  const before = performance.now();
  prepareCircuit(netlist).settle();
  return performance.now() - before;
}
