// MOSFETs with an insulated gate, level 1: a square law in saturation, a parabola below it, and the body diode.
//
// The bulk is joined to the source, so the threshold does not move. Drain and source change places when the voltage
// between them turns round. A pmos is an nmos with all voltages and currents reversed.
// Does not know: sub-threshold current, types by name.
// Source: Shichman, Hodges, IEEE J. Solid-State Circuits 3 (1968).
import type { DeviceFamily, EquationBuilder } from "../equations.ts";
import { criticalVolts, junction, limitJunction, straightVolts } from "../junction.ts";
import type { Mosfet } from "../netlist.ts";
import { add } from "./stamp.ts";

/** A, SPICE's default IS of the bulk junctions. */
const bodySaturationAmps = 1e-14;

/** @param thermal kT/q, V. @param gmin S across the body diode. */
export function mosfets(
  elements: readonly Mosfet[],
  builder: EquationBuilder,
  firstCurrent: number,
  thermal: number,
  gmin: number,
): DeviceFamily {
  const count = elements.length;
  const sign = Float64Array.from(elements, (e) => (e.kind === "nmos" ? 1 : -1));
  const drain = Int32Array.from(elements, (e) => builder.node(e.drain));
  const gate = Int32Array.from(elements, (e) => builder.node(e.gate));
  const source = Int32Array.from(elements, (e) => builder.node(e.source));
  const at = new Int32Array(6 * count);
  for (let k = 0; k < count; k += 1) {
    const columns = [drain[k] as number, gate[k] as number, source[k] as number];
    const rows = [drain[k] as number, source[k] as number];
    at.set(
      rows.flatMap((row) => columns.map((column) => builder.place(row, column))),
      6 * k,
    );
  }
  const firstState = builder.state(3 * count);
  const threshold = new Float64Array(count);
  const transconductance = new Float64Array(count);
  const lambda = new Float64Array(count);
  const bodyCritical = criticalVolts(bodySaturationAmps, thermal);
  const bodyStraight = straightVolts(bodySaturationAmps, thermal);
  const out = new Float64Array(2);
  // A, and S by gate–source and drain–source voltage.
  const channel = new Float64Array(3);

  /** Channel current for drain–source voltage ≥ 0. */
  function conduct(k: number, overdrive: number, vds: number): void {
    if (overdrive <= 0) {
      channel.fill(0);
      return;
    }
    const kp = transconductance[k] as number;
    const l = lambda[k] as number;
    const lengthened = kp * (1 + l * vds);
    if (overdrive <= vds) {
      const square = 0.5 * overdrive * overdrive;
      channel[0] = lengthened * square;
      channel[1] = lengthened * overdrive;
      channel[2] = kp * l * square;
    } else {
      const area = vds * (overdrive - 0.5 * vds);
      channel[0] = lengthened * area;
      channel[1] = lengthened * vds;
      channel[2] = lengthened * (overdrive - vds) + kp * l * area;
    }
  }

  return {
    take(k) {
      const e = elements[k] as Mosfet;
      threshold[k] = (sign[k] as number) * e.thresholdVolts;
      transconductance[k] = e.transconductance;
      lambda[k] = e.lambda ?? 0;
    },
    stampFixed() {},
    load(eq) {
      const { x, residual, jacobian, currents, state } = eq;
      const fromLast = eq.start === "last";
      const fromNothing = eq.start === "nothing";
      for (let k = 0; k < count; k += 1) {
        const d = drain[k] as number;
        const g = gate[k] as number;
        const s = source[k] as number;
        const turn = sign[k] as number;
        const wantedGs = turn * ((x[g] as number) - (x[s] as number));
        const wantedDs = turn * ((x[d] as number) - (x[s] as number));
        const on = threshold[k] as number;
        const own = firstState + 3 * k;
        let vgs = on;
        let vds = 0;
        let body = 0;
        if (!fromNothing) {
          vgs = fromLast ? limitStep(wantedGs, state[own] as number, on) : wantedGs;
          vds = fromLast ? limitStep(wantedDs, state[own + 1] as number, 0) : wantedDs;
          body = limitJunction(
            -wantedDs,
            fromLast ? (state[own + 2] as number) : bodyCritical,
            thermal,
            bodyCritical,
            bodyStraight,
          );
        }
        if (vgs !== wantedGs || vds !== wantedDs || body !== -wantedDs) eq.unsettled += 1;
        state[own] = vgs;
        state[own + 1] = vds;
        state[own + 2] = body;

        // Turned round, the drain is the source: its gate voltage is gate–drain, and the slopes change their owners.
        const turned = vds < 0;
        conduct(k, (turned ? vgs - vds : vgs) - on, Math.abs(vds));
        const amps = turned ? -(channel[0] as number) : (channel[0] as number);
        const byGate = turned ? -(channel[1] as number) : (channel[1] as number);
        const byDrain = turned ? (channel[1] as number) + (channel[2] as number) : (channel[2] as number);

        let bodyAmps = gmin * body - bodySaturationAmps;
        let bodySiemens = gmin;
        if (body > -3 * thermal) {
          junction(body, bodySaturationAmps, thermal, bodyStraight, out);
          bodyAmps = gmin * body + (out[0] as number);
          bodySiemens = gmin + (out[1] as number);
        }
        const total = amps + byGate * (wantedGs - vgs) + byDrain * (wantedDs - vds) - bodyAmps - bodySiemens * (-wantedDs - body);
        const intoDrain = turn * total;
        residual[d] = (residual[d] as number) + intoDrain;
        residual[s] = (residual[s] as number) - intoDrain;

        const slope = byDrain + bodySiemens;
        const p = 6 * k;
        add(jacobian, at[p] as number, slope);
        add(jacobian, at[p + 1] as number, byGate);
        add(jacobian, at[p + 2] as number, -slope - byGate);
        add(jacobian, at[p + 3] as number, -slope);
        add(jacobian, at[p + 4] as number, -byGate);
        add(jacobian, at[p + 5] as number, slope + byGate);

        const first = firstCurrent + 3 * k;
        currents[first] = intoDrain;
        currents[first + 1] = 0;
        currents[first + 2] = -intoDrain;
      }
    },
  };
}

/**
 * A square law does not overflow, but a guess far off makes Newton swing: a step may go as far as three times the distance
 * from the bend, and from the flat side just past it.
 */
function limitStep(v: number, previous: number, bend: number): number {
  const reach = 2 * Math.abs(previous - bend) + 1;
  return Math.min(previous + reach, Math.max(previous - reach, v));
}
