// Diodes: LEDs, silicon, Schottky, Zener. An exponential behind an optional series resistance.
//
// Does not know: colours, ratings.
import type { DeviceFamily, EquationBuilder } from "../equations.ts";
import { breakdownKnee, criticalVolts, junction, limitJunction, sameVolts, straightVolts } from "../junction.ts";
import type { Diode } from "../netlist.ts";
import { addConductance, conductancePlaces } from "./stamp.ts";

/** SPICE's IBV, A. */
const defaultBreakdownAmps = 1e-3;

/** Tells where it keeps the junction voltages of the last pass, one by diode. */
export interface DiodeFamily extends DeviceFamily {
  readonly firstState: number;
}

/** @param thermal kT/q, V. @param gmin S across every junction. */
export function diodes(
  elements: readonly Diode[],
  builder: EquationBuilder,
  firstCurrent: number,
  thermal: number,
  gmin: number,
): DiodeFamily {
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
  const straight = new Float64Array(count);
  const series = new Float64Array(count);
  /** V; infinite without breakdown. */
  const knee = new Float64Array(count);
  // What the last evaluation found, by diode: V, A, S. Most junctions of a warm start have not moved, and exp() is dear.
  const lastVolts = new Float64Array(count).fill(Number.NaN);
  const lastAmps = new Float64Array(count);
  const lastSiemens = new Float64Array(count);
  const out = new Float64Array(2);

  /** The voltage to compute with when `wanted` was asked for. */
  function limited(k: number, wanted: number, previous: number): number {
    const n = scale[k] as number;
    const edge = knee[k] as number;
    const bend = critical[k] as number;
    const end = straight[k] as number;
    if (wanted >= Math.min(0, 10 * n - edge)) return limitJunction(wanted, previous, n, bend, end);
    // In breakdown the mirrored exponential runs away in the same manner.
    const mirrored = -wanted - edge;
    const kept = limitJunction(mirrored, -previous - edge, n, bend, end);
    return kept === mirrored ? wanted : -edge - kept;
  }

  function evaluate(k: number, v: number): void {
    if (Math.abs(v - (lastVolts[k] as number)) <= sameVolts) return;
    const edge = knee[k] as number;
    const is = saturation[k] as number;
    const n = scale[k] as number;
    const end = straight[k] as number;
    if (v < -edge) {
      // −IS·exp(…): the forward curve of the mirrored voltage, less its −IS.
      junction(-edge - v, is, n, end, out);
      out[0] = -(out[0] as number) - is;
    } else junction(v, is, n, end, out);
    lastVolts[k] = v;
    lastAmps[k] = (out[0] as number) + gmin * v;
    lastSiemens[k] = (out[1] as number) + gmin;
  }

  return {
    firstState,
    take(k) {
      const e = elements[k] as Diode;
      const n = e.emission * thermal;
      saturation[k] = e.saturationAmps;
      scale[k] = n;
      critical[k] = criticalVolts(e.saturationAmps, n);
      straight[k] = straightVolts(e.saturationAmps, n);
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
      const fromLast = eq.start === "last";
      const fromNothing = eq.start === "nothing";
      for (let k = 0; k < count; k += 1) {
        const from = anode[k] as number;
        const mid = inner[k] as number;
        const to = cathode[k] as number;
        const wanted = (x[mid] as number) - (x[to] as number);
        const start = critical[k] as number;
        const previous = fromLast ? (state[firstState + k] as number) : start;
        let v = start;
        // Steps as small as this are never held back; most are, and passing numbers to a function would make objects of them.
        if (!fromNothing) v = Math.abs(wanted - previous) <= 0.5 * (scale[k] as number) ? wanted : limited(k, wanted, previous);
        if (v !== wanted) eq.unsettled += 1;
        state[firstState + k] = v;
        evaluate(k, v);
        const siemens = lastSiemens[k] as number;
        const amps = (lastAmps[k] as number) + siemens * (wanted - (lastVolts[k] as number));
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
