// Every device's slopes against differences of its own currents, at random voltages: a wrong slope still converges, slowly,
// and would never be noticed otherwise.
import { expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { seededRandom } from "../../base/index.ts";
import { assemble } from "./assemble.ts";
import type { Element } from "./index.ts";
import { restamp } from "./newton.ts";

const npn = { kind: "npn", saturationAmps: 1e-14, forwardGain: 150, reverseGain: 3 } as const;
const pins = { collector: "a", base: "b", emitter: "c" } as const;
const legs = { drain: "a", gate: "b", source: "c" } as const;
const regulator = { kind: "regulator", input: "a", output: "b", ground: "c", volts: 5, dropoutVolts: 1 } as const;
const elements: [name: string, element: Element][] = [
  ["resistor", { kind: "resistor", id: "E", a: "a", b: "b", ohms: 47 }],
  ["voltage source", { kind: "voltageSource", id: "E", plus: "a", minus: "b", volts: 5 }],
  ["inductor", { kind: "inductor", id: "E", a: "a", b: "b", henries: 1e-3 }],
  ["current source", { kind: "currentSource", id: "E", from: "a", to: "b", amps: 0.1 }],
  ["diode", { kind: "diode", id: "E", anode: "a", cathode: "b", saturationAmps: 1e-12, emission: 1.7, seriesOhms: 3 }],
  [
    "Zener",
    { kind: "diode", id: "E", anode: "a", cathode: "b", saturationAmps: 1e-14, emission: 1, seriesOhms: 0, breakdownVolts: 0.9 },
  ],
  ["npn", { ...npn, id: "E", ...pins }],
  ["pnp with ohms", { ...npn, kind: "pnp", id: "E", ...pins, baseOhms: 10, collectorOhms: 0.5, emitterOhms: 0.2 }],
  ["npn with Early effect", { ...npn, id: "E", ...pins, earlyVolts: 3, reverseEarlyVolts: 2 }],
  ["motor", { kind: "motor", id: "E", a: "a", b: "b", ohms: 3, henries: 0, k: 0.1, inertia: 1, drag: 0.1, friction: 0.2 }],
  [
    "battery",
    { kind: "battery", id: "E", plus: "a", minus: "b", volts: 9, emptyVolts: 6, ohms: 1, emptyOhms: 3, ampHours: 1, charge: 0.4 },
  ],
  ["switch", { kind: "switch", id: "E", a: "a", b: "b", closed: 1, onOhms: 3 }],
  ["fuse", { kind: "fuse", id: "E", a: "a", b: "b", ohms: 1, trippedOhms: 100, holdAmps: 1, coolSeconds: 1 }],
  ["nmos", { kind: "nmos", id: "E", ...legs, thresholdVolts: 0.4, transconductance: 0.1, lambda: 0.05 }],
  ["pmos", { kind: "pmos", id: "E", ...legs, thresholdVolts: -0.3, transconductance: 0.1 }],
  ["limited source", { kind: "limitedSource", id: "E", plus: "a", minus: "b", volts: 5, ohms: 0.5, limitAmps: 0.5 }],
  ["regulator", { ...regulator, id: "E", outputOhms: 0.1, quiescentAmps: 5e-3, limitAmps: 0.8 }],
];

for (const [name, element] of elements) {
  test(`${name}: slopes are those of its currents`, () => {
    for (let seed = 0; seed < sample(40, 5000); seed += 1) {
      const random = seededRandom(seed, name);
      // Three resistors keep every node on the way to ground, so that no pin to ground is added.
      const others = ["a", "b", "c"].map((node): Element => ({ kind: "resistor", id: node, a: node, b: "0", ohms: 1e6 }));
      const { machine } = assemble([element, ...others], {});
      const { eq, families, pattern } = machine;
      restamp(machine);
      const from = Float64Array.from(eq.x, (_, k) => (k === 0 ? 0 : 0.8 * random.next() - 0.4));
      /** Residual and matrix with every device exactly at x; regions stay as they are. */
      const load = (x: Float64Array) => {
        eq.x.set(x);
        // Twice, because the first pass may hold a junction back: from "volts" the second starts where it wanted to be.
        for (let pass = 0; pass < 12; pass += 1) {
          eq.residual.fill(0);
          eq.jacobian.set(eq.fixed);
          eq.unsettled = 0;
          for (const family of families) family.load(eq);
          eq.start = "last";
        }
        return { residual: eq.residual.slice(), jacobian: eq.jacobian.slice(), settled: eq.unsettled === 0 };
      };
      eq.start = "volts";
      eq.switchesLeft = 5;
      const { jacobian } = load(from);
      eq.switchesLeft = 0;
      for (let column = 1; column < eq.x.length; column += 1) {
        const h = 2e-6;
        const [up, down] = [1, -1].map((side) => {
          const x = from.slice();
          x[column] = (x[column] as number) + side * h;
          return load(x).residual;
        }) as [Float64Array, Float64Array];
        for (let row = 1; row < eq.x.length; row += 1) {
          const place = pattern.rows.findIndex((r, p) => p > 0 && r === row && pattern.columns[p] === column);
          const slope = place < 0 ? 0 : (jacobian[place] as number);
          const difference = ((up[row] as number) - (down[row] as number)) / (2 * h);
          // Where a curve has a corner (a gate's threshold, a quiescent current) the difference straddles it.
          const bend = Math.abs((up[row] as number) + (down[row] as number) - 2 * (load(from).residual[row] as number)) / h;
          expect(Math.abs(slope - difference), `seed ${seed}, row ${row}, column ${column}`).toBeLessThanOrEqual(
            1e-5 * (1 + Math.abs(slope)) + bend,
          );
        }
      }
    }
  });
}
