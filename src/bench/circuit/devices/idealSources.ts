// Voltage sources, current sources and, at an operating point, inductors: a wire whose current is an unknown.
//
// Does not know: supplies with limits (limitedSources.ts).
import type { DeviceFamily, EquationBuilder } from "../equations.ts";
import type { CurrentSource, Inductor, VoltageSource } from "../netlist.ts";
import { add } from "./stamp.ts";

/** V(plus) − V(minus) = volts; the unknown is the current into plus. */
export function voltageSources(elements: readonly VoltageSource[], builder: EquationBuilder, firstCurrent: number): DeviceFamily {
  const ends = elements.map((e) => [e.plus, e.minus] as const);
  return fixedVoltages(ends, (k) => (elements[k] as VoltageSource).volts, builder, firstCurrent);
}

/** V(a) − V(b) = 0; the unknown is the current from a to b. */
export function inductors(elements: readonly Inductor[], builder: EquationBuilder, firstCurrent: number): DeviceFamily {
  const ends = elements.map((e) => [e.a, e.b] as const);
  return fixedVoltages(ends, () => 0, builder, firstCurrent);
}

function fixedVoltages(
  ends: readonly (readonly [string, string])[],
  voltsOf: (k: number) => number,
  builder: EquationBuilder,
  firstCurrent: number,
): DeviceFamily {
  const count = ends.length;
  const plus = Int32Array.from(ends, ([p]) => builder.node(p));
  const minus = Int32Array.from(ends, ([, m]) => builder.node(m));
  const branch = Int32Array.from(ends, () => builder.branch());
  const volts = new Float64Array(count);
  const at = new Int32Array(4 * count);
  for (let k = 0; k < count; k += 1) {
    const [p, m, i] = [plus[k] as number, minus[k] as number, branch[k] as number];
    const firm = p !== m;
    at.set([builder.place(p, i, firm), builder.place(m, i, firm), builder.place(i, p, firm), builder.place(i, m, firm)], 4 * k);
  }
  return {
    take(k) {
      volts[k] = voltsOf(k);
    },
    stampFixed({ fixed }) {
      for (let p = 0; p < at.length; p += 1) {
        add(fixed, at[p] as number, p % 2 === 0 ? 1 : -1);
      }
    },
    load({ x, residual, currents, sourceScale }) {
      for (let k = 0; k < count; k += 1) {
        const p = plus[k] as number;
        const m = minus[k] as number;
        const i = branch[k] as number;
        const amps = x[i] as number;
        residual[p] = (residual[p] as number) + amps;
        residual[m] = (residual[m] as number) - amps;
        residual[i] = (x[p] as number) - (x[m] as number) - (volts[k] as number) * sourceScale;
        currents[firstCurrent + k] = amps;
      }
    },
  };
}

/** Drives its current from `from` through itself to `to`. */
export function currentSources(elements: readonly CurrentSource[], builder: EquationBuilder, firstCurrent: number): DeviceFamily {
  const count = elements.length;
  const from = Int32Array.from(elements, (e) => builder.node(e.from));
  const to = Int32Array.from(elements, (e) => builder.node(e.to));
  const amps = new Float64Array(count);
  return {
    take(k) {
      amps[k] = (elements[k] as CurrentSource).amps;
    },
    stampFixed() {},
    load({ residual, currents, sourceScale }) {
      for (let k = 0; k < count; k += 1) {
        const flow = (amps[k] as number) * sourceScale;
        const f = from[k] as number;
        const t = to[k] as number;
        residual[f] = (residual[f] as number) + flow;
        residual[t] = (residual[t] as number) - flow;
        currents[firstCurrent + k] = flow;
      }
    },
  };
}
