// Supplies with a current limit: a voltage behind ohms, then a constant current, and never a current back.
//
// Does not know: fuses and fold-back over time (bench/rehearsal).
import type { DeviceFamily, EquationBuilder, Equations } from "../equations.ts";
import type { LimitedSource } from "../netlist.ts";
import { addCurrentRow, addVoltageRow, fixesCurrent, moveTo, region, slack, supplyRow } from "./regions.ts";
import { addEach } from "./stamp.ts";

/** A family whose members may have a current that no voltage changes: the limit, or none. */
export interface SupplyFamily extends DeviceFamily {
  fixesCurrent(eq: Equations, k: number): boolean;
}

/** V(plus) − V(minus) = volts + ohms · current, with the current into plus between −limitAmps and 0 as unknown. */
export function limitedSources(elements: readonly LimitedSource[], builder: EquationBuilder, firstCurrent: number): SupplyFamily {
  const count = elements.length;
  const plus = Int32Array.from(elements, (e) => builder.node(e.plus));
  const minus = Int32Array.from(elements, (e) => builder.node(e.minus));
  const branch = Int32Array.from(elements, () => builder.branch());
  const rowAt = supplyRow(builder, plus, minus, branch);
  const plusAt = branch.map((column, k) => builder.place(plus[k] as number, column));
  const minusAt = branch.map((column, k) => builder.place(minus[k] as number, column));
  const firstState = builder.state(count);
  return {
    take() {},
    stampFixed({ fixed }) {
      addEach(fixed, plusAt, 1);
      addEach(fixed, minusAt, -1);
    },
    load(eq) {
      const { x, residual, jacobian, currents, state } = eq;
      for (let k = 0; k < count; k += 1) {
        const { volts, ohms, limitAmps } = elements[k] as LimitedSource;
        const p = plus[k] as number;
        const m = minus[k] as number;
        const row = branch[k] as number;
        const amps = x[row] as number;
        const emf = volts * eq.sourceScale;
        const over = (x[p] as number) - (x[m] as number) - emf - ohms * amps;
        if (eq.start !== "last") state[firstState + k] = eq.suppliesBlocked ? region.blocked : region.giving;
        const now = state[firstState + k] as number;
        let wanted = now;
        if (now === region.giving) {
          if (amps > slack) wanted = region.blocked;
          else if (-amps > limitAmps + slack * (1 + limitAmps)) wanted = region.atLimit;
        } else {
          // At the limit the load pulls the voltage down, blocked something else holds it up; else the source holds it again.
          const free = now === region.atLimit ? over > slack * (1 + emf) : over < -slack * (1 + emf);
          if (free) wanted = region.giving;
        }
        const is = moveTo(eq, firstState + k, wanted);
        if (is === region.giving) {
          residual[row] = over;
          addVoltageRow(jacobian, rowAt, k, ohms);
        } else {
          residual[row] = is === region.atLimit ? amps + limitAmps : amps;
          addCurrentRow(jacobian, rowAt, k);
        }
        residual[p] = (residual[p] as number) + amps;
        residual[m] = (residual[m] as number) - amps;
        currents[firstCurrent + k] = amps;
      }
    },
    fixesCurrent: (eq, k) => fixesCurrent(eq.state[firstState + k] as number),
  };
}
