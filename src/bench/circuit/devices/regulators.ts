// Linear regulators: they hold their output while the input is high enough, and follow it below.
//
// Does not know: heat (bench/rehearsal adds it), the capacitors that keep a real one steady.
import type { EquationBuilder } from "../equations.ts";
import type { Regulator } from "../netlist.ts";
import type { SupplyFamily } from "./limitedSources.ts";
import { addCurrentRow, addVoltageRow, fixesCurrent, moveTo, region, slack, supplyRow } from "./regions.ts";
import { addConductance, addEach, conductancePlaces } from "./stamp.ts";

/** The current into the output, between −limitAmps and 0, is the unknown; the input takes it and the quiescent current. */
export function regulators(elements: readonly Regulator[], builder: EquationBuilder, firstCurrent: number): SupplyFamily {
  const count = elements.length;
  const output = Int32Array.from(elements, (e) => builder.node(e.output));
  const input = Int32Array.from(elements, (e) => builder.node(e.input));
  const ground = Int32Array.from(elements, (e) => builder.node(e.ground));
  const branch = Int32Array.from(elements, () => builder.branch());
  const holdAt = supplyRow(builder, output, ground, branch);
  const followAt = supplyRow(builder, output, input, branch);
  const outputAt = branch.map((column, k) => builder.place(output[k] as number, column));
  const inputAt = branch.map((column, k) => builder.place(input[k] as number, column));
  const quiescentAt = conductancePlaces(builder, input, ground);
  const firstState = builder.state(count);
  return {
    take() {},
    stampFixed({ fixed }) {
      addEach(fixed, outputAt, 1);
      addEach(fixed, inputAt, -1);
    },
    load(eq) {
      const { x, residual, jacobian, currents, state } = eq;
      for (let k = 0; k < count; k += 1) {
        const { volts, dropoutVolts, outputOhms, quiescentAmps, limitAmps } = elements[k] as Regulator;
        const o = output[k] as number;
        const i = input[k] as number;
        const g = ground[k] as number;
        const row = branch[k] as number;
        const amps = x[row] as number;
        const above = (x[o] as number) - (x[g] as number) - outputOhms * amps;
        const supply = (x[i] as number) - (x[g] as number);
        const held = volts * eq.sourceScale;
        const available = supply - dropoutVolts;
        const share = slack * (1 + held);
        // Joined to its own input (VIN wired to 5V) it can only be blocked.
        if (eq.start !== "last") state[firstState + k] = eq.suppliesBlocked || o === i ? region.blocked : region.giving;
        const now = state[firstState + k] as number;
        let wanted = now;
        if (now === region.giving || now === region.following) {
          if (amps > slack) wanted = region.blocked;
          else if (limitAmps !== undefined && -amps > limitAmps + slack * (1 + limitAmps)) wanted = region.atLimit;
          else if (available < held - share) wanted = region.following;
          else if (available > held + share) wanted = region.giving;
        } else {
          const over = above - Math.min(held, available);
          const free = now === region.atLimit ? over > share : over < -share;
          if (free) wanted = available < held ? region.following : region.giving;
        }
        const is = moveTo(eq, firstState + k, wanted);
        if (is === region.giving) {
          residual[row] = above - held;
          addVoltageRow(jacobian, holdAt, k, outputOhms);
        } else if (is === region.following) {
          residual[row] = above - available;
          addVoltageRow(jacobian, followAt, k, outputOhms);
        } else {
          residual[row] = is === region.atLimit ? amps + (limitAmps as number) : amps;
          addCurrentRow(jacobian, holdAt, k);
        }
        const rated = volts + dropoutVolts;
        const portion = rated > 0 ? Math.min(1, supply / rated) : 0;
        const own = quiescentAmps * portion;
        if (portion < 1 && rated > 0) addConductance(jacobian, quiescentAt, k, quiescentAmps / rated);
        residual[o] = (residual[o] as number) + amps;
        residual[i] = (residual[i] as number) - amps + own;
        residual[g] = (residual[g] as number) - own;
        const first = firstCurrent + 3 * k;
        currents[first] = amps;
        currents[first + 1] = own - amps;
        currents[first + 2] = -own;
      }
    },
    fixesCurrent: (eq, k) => fixesCurrent(eq.state[firstState + k] as number),
  };
}
