// Batteries that run down: a voltage behind ohms, both of which change with what was taken out.
//
// Does not know: kinds of cells, rest and recovery.
import type { EquationBuilder, TurningFamily } from "../equations.ts";
import type { Battery } from "../netlist.ts";
import { addVoltageRow, supplyRow } from "./regions.ts";
import { addEach } from "./stamp.ts";

/** A battery is asked again after this share of its charge. */
const chargeStep = 1 / 500;
const secondsPerHour = 3600;

/** V(plus) − V(minus) = volts + ohms · current, with the current into plus as unknown. */
export function batteries(elements: readonly Battery[], builder: EquationBuilder, firstCurrent: number): TurningFamily {
  const count = elements.length;
  const plus = Int32Array.from(elements, (e) => builder.node(e.plus));
  const minus = Int32Array.from(elements, (e) => builder.node(e.minus));
  const branch = Int32Array.from(elements, () => builder.branch());
  const rowAt = supplyRow(builder, plus, minus, branch);
  const plusAt = branch.map((column, k) => builder.place(plus[k] as number, column));
  const minusAt = branch.map((column, k) => builder.place(minus[k] as number, column));
  const charge = new Float64Array(count);
  const said = new Float64Array(count).fill(Number.NaN);
  return {
    take(k) {
      const { charge: now } = elements[k] as Battery;
      if (said[k] === now) return;
      said[k] = now;
      charge[k] = now;
    },
    stampFixed({ fixed }) {
      addEach(fixed, plusAt, 1);
      addEach(fixed, minusAt, -1);
    },
    load({ x, residual, jacobian, currents, sourceScale }) {
      for (let k = 0; k < count; k += 1) {
        const { volts, emptyVolts, ohms, emptyOhms } = elements[k] as Battery;
        const full = charge[k] as number;
        const p = plus[k] as number;
        const m = minus[k] as number;
        const row = branch[k] as number;
        const amps = x[row] as number;
        const inside = emptyOhms + (ohms - emptyOhms) * full;
        const emf = (emptyVolts + (volts - emptyVolts) * full) * sourceScale;
        residual[row] = (x[p] as number) - (x[m] as number) - emf - inside * amps;
        addVoltageRow(jacobian, rowAt, k, inside);
        residual[p] = (residual[p] as number) + amps;
        residual[m] = (residual[m] as number) - amps;
        currents[firstCurrent + 2 * k] = amps;
        currents[firstCurrent + 2 * k + 1] = full;
      }
    },
    longestStep({ x }) {
      let longest = Number.POSITIVE_INFINITY;
      for (let k = 0; k < count; k += 1) {
        const amps = Math.abs(x[branch[k] as number] as number);
        if (amps > 0) longest = Math.min(longest, (chargeStep * secondsPerHour * (elements[k] as Battery).ampHours) / amps);
      }
      return longest;
    },
    nextTurn: () => Number.POSITIVE_INFINITY,
    wantsTurn: () => false,
    pass({ x, currents }, seconds) {
      for (let k = 0; k < count; k += 1) {
        const share = ((x[branch[k] as number] as number) * seconds) / (secondsPerHour * (elements[k] as Battery).ampHours);
        charge[k] = Math.min(1, Math.max(0, (charge[k] as number) + share));
        currents[firstCurrent + 2 * k + 1] = charge[k] as number;
      }
      return false;
    },
  };
}
