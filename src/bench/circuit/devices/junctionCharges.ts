// The charge that a diode keeps: of its depleted zone, and of the carriers that are on their way while it conducts.
//
// It makes a diode slow: it goes on conducting for a moment after it was turned round. Built-in voltage 1 V, exponent 0.5 and
// the straight line from half of it on are SPICE's defaults.
// Does not know: temperature.
// Source: ngspice 39 manual, section 7.2 (diode equations, DC and transient).
import type { EquationBuilder, Equations, StoringFamily } from "../equations.ts";
import { junction, straightVolts } from "../junction.ts";
import type { Diode } from "../netlist.ts";
import { addConductance, conductancePlaces } from "./stamp.ts";

/** One diode with charge, and where the diodes' own family keeps its junction voltage and its current. */
export interface ChargedDiode {
  readonly diode: Diode;
  readonly state: number;
  readonly current: number;
}

/** V from which the depleted zone's capacitance grows in a straight line. */
const bend = 0.5;

/** @param thermal kT/q, V. */
export function junctionCharges(members: readonly ChargedDiode[], builder: EquationBuilder, thermal: number): StoringFamily {
  const count = members.length;
  const plus = Int32Array.from(members, ({ diode }) => builder.innerOf(diode.anode, `${diode.id} anode`));
  const minus = Int32Array.from(members, ({ diode }) => builder.node(diode.cathode));
  const at = conductancePlaces(builder, plus, minus);
  const kept = new Float64Array(count);
  const amps = new Float64Array(count);
  const out = new Float64Array(2);
  // C and F of the last evaluation.
  const charge = new Float64Array(2);

  function evaluate(k: number, v: number): void {
    const { junctionFarads = 0, transitSeconds = 0, saturationAmps, emission } = (members[k] as ChargedDiode).diode;
    if (v < bend) {
      const root = Math.sqrt(1 - v);
      charge[0] = 2 * junctionFarads * (1 - root);
      charge[1] = junctionFarads / root;
    } else {
      const steep = (1 - bend) ** 1.5;
      const begun = 2 * (1 - Math.sqrt(1 - bend));
      charge[0] = junctionFarads * (begun + (0.25 * (v - bend) + 0.25 * (v * v - bend * bend)) / steep);
      charge[1] = (junctionFarads * (0.25 + 0.5 * v)) / steep;
    }
    if (transitSeconds > 0) {
      const volts = emission * thermal;
      junction(v, saturationAmps, volts, straightVolts(saturationAmps, volts), out);
      charge[0] = (charge[0] as number) + transitSeconds * (out[0] as number);
      charge[1] = (charge[1] as number) + transitSeconds * (out[1] as number);
    }
  }

  const across = ({ x }: Equations, k: number) => (x[plus[k] as number] as number) - (x[minus[k] as number] as number);
  /** The current at the present guess, with the charge at `v` and its slope from there. */
  function flow({ stepSeconds, slopes }: Equations, k: number, v: number, wanted: number): number {
    if (stepSeconds === 0) return 0;
    evaluate(k, v);
    const now = (charge[0] as number) + (charge[1] as number) * (wanted - v);
    return (slopes * (now - (kept[k] as number))) / stepSeconds - (slopes === 2 ? (amps[k] as number) : 0);
  }

  return {
    count,
    take() {},
    stampFixed() {},
    load(eq) {
      const { residual, jacobian, currents, state, stepSeconds, slopes } = eq;
      for (let k = 0; k < count; k += 1) {
        const { state: stateAt, current } = members[k] as ChargedDiode;
        // The diode has just held its voltage back where it would run away; so must the charge.
        const into = flow(eq, k, state[stateAt] as number, across(eq, k));
        const from = plus[k] as number;
        const to = minus[k] as number;
        residual[from] = (residual[from] as number) + into;
        residual[to] = (residual[to] as number) - into;
        addConductance(jacobian, at, k, (slopes * (charge[1] as number)) / stepSeconds);
        currents[current] = (currents[current] as number) + into;
      }
    },
    read(eq, values, rates, first) {
      for (let k = 0; k < count; k += 1) {
        const v = across(eq, k);
        const into = flow(eq, k, v, v);
        values[first + k] = v;
        rates[first + k] = (charge[1] as number) > 0 ? into / (charge[1] as number) : 0;
      }
    },
    keep(eq) {
      for (let k = 0; k < count; k += 1) {
        const v = across(eq, k);
        amps[k] = flow(eq, k, v, v);
        evaluate(k, v);
        kept[k] = charge[0] as number;
      }
    },
  };
}
