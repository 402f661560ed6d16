// Small DC motors with a permanent magnet: a winding that turns into a generator as the shaft turns.
//
// Does not know: brushes and their noise, gears, what is on the shaft (it is friction and inertia here).
// Source: any textbook of electrical machines; the two equations stand at Motor in netlist.ts.
import type { EquationBuilder, Equations, StoringFamily } from "../equations.ts";
import type { Motor } from "../netlist.ts";
import { add } from "./stamp.ts";

/** rad/s. Friction grows from nothing to its whole within about this speed; without a bend Newton's method would hop across. */
const creep = 0.5;
/** Share by which the speed may still change in the last pass. */
const sameSpeed = 1e-6;

/** The unknowns are the current from a to b and the speed. @param inTime else at rest: both no longer change. */
export function motors(
  elements: readonly Motor[],
  builder: EquationBuilder,
  firstCurrent: number,
  inTime: boolean,
): StoringFamily {
  const count = elements.length;
  const a = Int32Array.from(elements, (e) => builder.node(e.a));
  const b = Int32Array.from(elements, (e) => builder.node(e.b));
  const current = Int32Array.from(elements, () => builder.branch());
  const speed = Int32Array.from(elements, () => builder.branch());
  const firstState = builder.state(count);
  const places = 8;
  const at = new Int32Array(places * count);
  for (let k = 0; k < count; k += 1) {
    const [from, to, i, w] = [a[k], b[k], current[k], speed[k]] as [number, number, number, number];
    const firm = from !== to;
    at.set(
      [
        builder.place(from, i, firm),
        builder.place(to, i, firm),
        builder.place(i, from),
        builder.place(i, to),
        builder.place(i, i),
        builder.place(i, w),
        builder.place(w, i),
        builder.place(w, w),
      ],
      places * k,
    );
  }
  // What was at the last accepted point: A, rad/s, and V and N·m that were left to change them.
  const amps = new Float64Array(count);
  const turning = new Float64Array(count);
  const leftVolts = new Float64Array(count);
  const leftTorque = new Float64Array(count);

  const voltsLeft = ({ x }: Equations, k: number) => {
    const { ohms, k: constant } = elements[k] as Motor;
    const across = (x[a[k] as number] as number) - (x[b[k] as number] as number);
    return across - ohms * (x[current[k] as number] as number) - constant * (x[speed[k] as number] as number);
  };
  const torqueLeft = ({ x }: Equations, k: number) => {
    const { k: constant, drag, friction } = elements[k] as Motor;
    const w = x[speed[k] as number] as number;
    return constant * (x[current[k] as number] as number) - drag * w - friction * Math.tanh(w / creep);
  };

  return {
    count: 2 * count,
    take() {},
    stampFixed({ fixed }) {
      for (let k = 0; k < count; k += 1) {
        add(fixed, at[places * k] as number, 1);
        add(fixed, at[places * k + 1] as number, -1);
      }
    },
    load(eq) {
      const { x, residual, jacobian, currents, state, slopes, stepSeconds } = eq;
      for (let k = 0; k < count; k += 1) {
        const { ohms, henries, k: constant, inertia, drag, friction, stalled = 0 } = elements[k] as Motor;
        const i = current[k] as number;
        const w = speed[k] as number;
        const flow = x[i] as number;
        const turns = x[w] as number;
        const swiftness = inTime ? slopes / stepSeconds : 0;
        const carried = inTime && slopes === 2 ? 1 : 0;
        const last = firstState + k;
        // Its speed is no node's voltage, so that Newton's method would not wait for it.
        if (Math.abs(turns - (state[last] as number)) > sameSpeed * (1 + Math.abs(turns))) eq.unsettled += 1;
        state[last] = turns;
        const slow = henries * swiftness;
        const heavy = inertia * swiftness;
        const from = a[k] as number;
        const to = b[k] as number;
        residual[from] = (residual[from] as number) + flow;
        residual[to] = (residual[to] as number) - flow;
        residual[i] =
          voltsLeft(eq, k) - slow * (flow - (amps[k] as number)) + (henries > 0 ? carried * (leftVolts[k] as number) : 0);
        const p = places * k;
        add(jacobian, at[p + 2] as number, 1);
        add(jacobian, at[p + 3] as number, -1);
        add(jacobian, at[p + 4] as number, -ohms - slow);
        add(jacobian, at[p + 5] as number, -constant);
        if (stalled !== 0) {
          residual[w] = turns;
          add(jacobian, at[p + 7] as number, 1);
        } else {
          const bend = Math.tanh(turns / creep);
          residual[w] = torqueLeft(eq, k) - heavy * (turns - (turning[k] as number)) + carried * (leftTorque[k] as number);
          add(jacobian, at[p + 6] as number, constant);
          add(jacobian, at[p + 7] as number, -drag - heavy - (friction * (1 - bend * bend)) / creep);
        }
        currents[firstCurrent + 2 * k] = flow;
        currents[firstCurrent + 2 * k + 1] = turns;
      }
    },
    read(eq, values, rates, first) {
      for (let k = 0; k < count; k += 1) {
        const { henries, inertia, stalled = 0 } = elements[k] as Motor;
        values[first + 2 * k] = eq.x[current[k] as number] as number;
        rates[first + 2 * k] = henries > 0 ? voltsLeft(eq, k) / henries : 0;
        values[first + 2 * k + 1] = eq.x[speed[k] as number] as number;
        rates[first + 2 * k + 1] = stalled === 0 ? torqueLeft(eq, k) / inertia : 0;
      }
    },
    put({ x }, k, flow, turns = 0) {
      x[current[k] as number] = flow;
      x[speed[k] as number] = turns;
    },
    keep(eq) {
      for (let k = 0; k < count; k += 1) {
        amps[k] = eq.x[current[k] as number] as number;
        turning[k] = eq.x[speed[k] as number] as number;
        leftVolts[k] = voltsLeft(eq, k);
        leftTorque[k] = elements[k]?.stalled ? 0 : torqueLeft(eq, k);
      }
    },
  };
}
