// Diodes: LEDs, silicon, Schottky, Zener. An exponential behind an optional series resistance.
//
// Does not know: colours, ratings.
import type { DeviceFamily, EquationBuilder } from "../equations.ts";
import { breakdownKnee, criticalVolts, junction, limitJunction } from "../junction.ts";
import type { Diode } from "../netlist.ts";
import { addConductance, conductancePlaces } from "./stamp.ts";

/** SPICE's IBV, A. */
const defaultBreakdownAmps = 1e-3;

/** @param thermal kT/q, V. @param gmin S across every junction. */
export function diodes(
  elements: readonly Diode[],
  builder: EquationBuilder,
  firstCurrent: number,
  thermal: number,
  gmin: number,
): DeviceFamily {
  const count = elements.length;
  const anode = Int32Array.from(elements, (e) => builder.node(e.anode));
  const inner = Int32Array.from(elements, (e) => builder.innerNode(e.anode, `${e.id} anode`, e.seriesOhms));
  const cathode = Int32Array.from(elements, (e) => builder.node(e.cathode));
  const seriesAt = conductancePlaces(builder, anode, inner);
  const junctionAt = conductancePlaces(builder, inner, cathode);
  const firstState = builder.state(count);
  const saturation = new Float64Array(count);
  const scale = new Float64Array(count);
  const critical = new Float64Array(count);
  const series = new Float64Array(count);
  /** V; infinite without breakdown. */
  const knee = new Float64Array(count);
  // What the last evaluation found, by diode: V, A, S. Most junctions of a warm start have not moved, and exp() is dear.
  const lastVolts = new Float64Array(count).fill(Number.NaN);
  const lastAmps = new Float64Array(count);
  const lastSiemens = new Float64Array(count);
  const out = new Float64Array(2);

  function limited(k: number, v: number, previous: number): number {
    const n = scale[k] as number;
    const edge = knee[k] as number;
    // In breakdown the mirrored exponential runs away in the same manner.
    if (v < Math.min(0, 10 * n - edge)) return -edge - limitJunction(-v - edge, -previous - edge, n, critical[k] as number);
    return limitJunction(v, previous, n, critical[k] as number);
  }

  function evaluate(k: number, v: number): void {
    if (v === lastVolts[k]) return;
    const edge = knee[k] as number;
    if (v < -edge) {
      const n = scale[k] as number;
      const e = Math.exp(-(edge + v) / n);
      out[0] = -(saturation[k] as number) * e;
      out[1] = ((saturation[k] as number) * e) / n;
    } else junction(v, saturation[k] as number, scale[k] as number, out);
    lastVolts[k] = v;
    lastAmps[k] = (out[0] as number) + gmin * v;
    lastSiemens[k] = (out[1] as number) + gmin;
  }

  return {
    take(k) {
      const e = elements[k] as Diode;
      const n = e.emission * thermal;
      saturation[k] = e.saturationAmps;
      scale[k] = n;
      critical[k] = criticalVolts(e.saturationAmps, n);
      series[k] = e.seriesOhms > 0 ? 1 / e.seriesOhms : 0;
      knee[k] =
        e.breakdownVolts === undefined
          ? Number.POSITIVE_INFINITY
          : breakdownKnee(e.breakdownVolts, e.breakdownAmps ?? defaultBreakdownAmps, e.saturationAmps, n, thermal);
      lastVolts[k] = Number.NaN;
    },
    stampFixed({ fixed }) {
      for (let k = 0; k < count; k += 1) addConductance(fixed, seriesAt, k, series[k] as number);
    },
    load(eq) {
      const { x, residual, jacobian, currents, state } = eq;
      for (let k = 0; k < count; k += 1) {
        const from = anode[k] as number;
        const mid = inner[k] as number;
        const to = cathode[k] as number;
        const wanted = (x[mid] as number) - (x[to] as number);
        const start = critical[k] as number;
        let v = start;
        if (eq.start !== "nothing") v = limited(k, wanted, eq.start === "last" ? (state[firstState + k] as number) : start);
        if (v !== wanted) eq.unsettled += 1;
        state[firstState + k] = v;
        evaluate(k, v);
        const siemens = lastSiemens[k] as number;
        const amps = (lastAmps[k] as number) + siemens * (wanted - v);
        const throughSeries = (series[k] as number) * ((x[from] as number) - (x[mid] as number));
        residual[from] = (residual[from] as number) + throughSeries;
        residual[mid] = (residual[mid] as number) + amps - throughSeries;
        residual[to] = (residual[to] as number) - amps;
        addConductance(jacobian, junctionAt, k, siemens);
        currents[firstCurrent + k] = amps;
      }
    },
  };
}
