// Capacitors and inductors on their way through time.
//
// A step of h seconds from (v0, i0) to (v1, i1): C·(v1 − v0) = h·i1 by backward Euler, h·(i0 + i1)/2 by the trapezoidal rule;
// an inductor is the same with voltage and current exchanged. Both keep their current as an unknown, so that a step of
// (almost) no length is as well behaved as a long one: the capacitor is then a voltage source, the inductor a current source.
// Does not know: how long the next step is.
// Source: Nagel, SPICE2, memo UCB/ERL-M520 (1975), chapter on numerical integration.
import type { EquationBuilder, Equations, StoringFamily } from "../equations.ts";
import type { Capacitor, Inductor } from "../netlist.ts";
import { add } from "./stamp.ts";

/** Two ends and a current; what it keeps from the last accepted step. */
function twoEnds(elements: readonly { readonly a: string; readonly b: string }[], builder: EquationBuilder) {
  const count = elements.length;
  return {
    count,
    a: Int32Array.from(elements, (e) => builder.node(e.a)),
    b: Int32Array.from(elements, (e) => builder.node(e.b)),
    branch: Int32Array.from(elements, () => builder.branch()),
    size: new Float64Array(count),
    volts: new Float64Array(count),
    amps: new Float64Array(count),
  };
}

/** The unknown is the current from a to b; its row says v − (h/slopes·C)·i = what was. */
export function storingCapacitors(elements: readonly Capacitor[], builder: EquationBuilder, firstCurrent: number): StoringFamily {
  const { count, a, b, branch, size, volts, amps } = twoEnds(elements, builder);
  const placeAt = new Int32Array(5 * count);
  for (let k = 0; k < count; k += 1) {
    const [from, to, row] = [a[k] as number, b[k] as number, branch[k] as number];
    const firm = from !== to;
    placeAt.set(
      [
        builder.place(from, row, firm),
        builder.place(to, row, firm),
        builder.place(row, from, firm),
        builder.place(row, to, firm),
        builder.place(row, row),
      ],
      5 * k,
    );
    volts[k] = elements[k]?.initialVolts ?? 0;
  }
  const across = ({ x }: Equations, k: number) => (x[a[k] as number] as number) - (x[b[k] as number] as number);
  return {
    count,
    take(k) {
      size[k] = (elements[k] as Capacitor).farads;
    },
    stampFixed({ fixed }) {
      for (let k = 0; k < count; k += 1) {
        add(fixed, placeAt[5 * k] as number, 1);
        add(fixed, placeAt[5 * k + 1] as number, -1);
        add(fixed, placeAt[5 * k + 2] as number, 1);
        add(fixed, placeAt[5 * k + 3] as number, -1);
      }
    },
    load({ x, residual, jacobian, currents, stepSeconds, slopes }) {
      for (let k = 0; k < count; k += 1) {
        const from = a[k] as number;
        const to = b[k] as number;
        const row = branch[k] as number;
        const ohms = stepSeconds / (slopes * (size[k] as number));
        const flow = x[row] as number;
        const was = (volts[k] as number) + (slopes === 2 ? ohms * (amps[k] as number) : 0);
        residual[from] = (residual[from] as number) + flow;
        residual[to] = (residual[to] as number) - flow;
        residual[row] = (x[from] as number) - (x[to] as number) - ohms * flow - was;
        add(jacobian, placeAt[5 * k + 4] as number, -ohms);
        currents[firstCurrent + k] = flow;
      }
    },
    read(eq, values, rates, at) {
      for (let k = 0; k < count; k += 1) {
        values[at + k] = across(eq, k);
        rates[at + k] = (eq.x[branch[k] as number] as number) / (size[k] as number);
      }
    },
    keep(eq) {
      for (let k = 0; k < count; k += 1) {
        volts[k] = across(eq, k);
        amps[k] = eq.x[branch[k] as number] as number;
      }
    },
  };
}

/** The unknown is the current from a to b; its row says i − (h/slopes·L)·v = what was. */
export function storingInductors(elements: readonly Inductor[], builder: EquationBuilder, firstCurrent: number): StoringFamily {
  const { count, a, b, branch, size, volts, amps } = twoEnds(elements, builder);
  const placeAt = new Int32Array(5 * count);
  for (let k = 0; k < count; k += 1) {
    const [from, to, row] = [a[k] as number, b[k] as number, branch[k] as number];
    placeAt.set(
      [
        builder.place(from, row),
        builder.place(to, row),
        builder.place(row, from),
        builder.place(row, to),
        builder.place(row, row, true),
      ],
      5 * k,
    );
    amps[k] = elements[k]?.initialAmps ?? 0;
  }
  const across = ({ x }: Equations, k: number) => (x[a[k] as number] as number) - (x[b[k] as number] as number);
  return {
    count,
    take(k) {
      size[k] = (elements[k] as Inductor).henries;
    },
    stampFixed({ fixed }) {
      for (let k = 0; k < count; k += 1) {
        add(fixed, placeAt[5 * k] as number, 1);
        add(fixed, placeAt[5 * k + 1] as number, -1);
        add(fixed, placeAt[5 * k + 4] as number, 1);
      }
    },
    load({ x, residual, jacobian, currents, stepSeconds, slopes }) {
      for (let k = 0; k < count; k += 1) {
        const from = a[k] as number;
        const to = b[k] as number;
        const row = branch[k] as number;
        const siemens = stepSeconds / (slopes * (size[k] as number));
        const flow = x[row] as number;
        const was = (amps[k] as number) + (slopes === 2 ? siemens * (volts[k] as number) : 0);
        residual[from] = (residual[from] as number) + flow;
        residual[to] = (residual[to] as number) - flow;
        residual[row] = flow - siemens * ((x[from] as number) - (x[to] as number)) - was;
        add(jacobian, placeAt[5 * k + 2] as number, -siemens);
        add(jacobian, placeAt[5 * k + 3] as number, siemens);
        currents[firstCurrent + k] = flow;
      }
    },
    read(eq, values, rates, at) {
      for (let k = 0; k < count; k += 1) {
        values[at + k] = eq.x[branch[k] as number] as number;
        rates[at + k] = across(eq, k) / (size[k] as number);
      }
    },
    put: ({ x }, k, value) => {
      x[branch[k] as number] = value;
    },
    keep(eq) {
      for (let k = 0; k < count; k += 1) {
        volts[k] = across(eq, k);
        amps[k] = eq.x[branch[k] as number] as number;
      }
    },
  };
}
