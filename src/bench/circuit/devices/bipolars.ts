// Bipolar transistors, npn and pnp: Ebers–Moll in SPICE's transport form, with ohms inside the three leads.
//
// Collector current BE − BC·(1 + 1/reverseGain), base current BE/forwardGain + BC/reverseGain, where BE and BC are the
// currents of two junctions; where it is given, the Early effect widens BE − BC by the voltages. A pnp is an npn with all voltages and currents reversed.
// Does not know: types by name, ratings.
// Source: Gummel, Poon, Bell Syst. Tech. J. 49 (1970), without roll-off; Early, Proc. IRE 40 (1952).
import type { DeviceFamily, EquationBuilder, Unknown } from "../equations.ts";
import { criticalVolts, junction, limitJunction, sameVolts, straightVolts } from "../junction.ts";
import type { BipolarTransistor } from "../netlist.ts";
import { add, addConductance, addEach, conductancePlaces } from "./stamp.ts";

/** The ohms of collector, base and emitter. */
const leadOhms = ["collectorOhms", "baseOhms", "emitterOhms"] as const;
type LeadOhms = (typeof leadOhms)[number];

/** @param thermal kT/q, V. @param gmin S across both junctions and to the substrate, which is ground. */
export function bipolars(
  elements: readonly BipolarTransistor[],
  builder: EquationBuilder,
  firstCurrent: number,
  thermal: number,
  gmin: number,
): DeviceFamily {
  const count = elements.length;
  const sign = Float64Array.from(elements, (e) => (e.kind === "npn" ? 1 : -1));
  const inner = new Int32Array(3 * count);
  // Only leads with ohms have a node of their own inside; most have none.
  const leads: { readonly outer: Unknown; readonly inner: Unknown; readonly k: number; readonly field: LeadOhms }[] = [];
  elements.forEach((e, k) => {
    [e.collector, e.base, e.emitter].forEach((node, lead) => {
      const field = leadOhms[lead] as LeadOhms;
      const unknown = builder.innerNode(node, `${e.id} ${field}`, e[field]);
      inner[lead * count + k] = unknown;
      if (e[field]) leads.push({ outer: builder.node(node), inner: unknown, k, field });
    });
  });
  const leadOuter = Int32Array.from(leads, ({ outer }) => outer);
  const leadInner = Int32Array.from(leads, ({ inner }) => inner);
  const leadAt = conductancePlaces(builder, leadOuter, leadInner);
  const leadSiemens = new Float64Array(leads.length);
  const C = 0;
  const B = count;
  const E = 2 * count;
  /** SPICE's default: a vertical npn sits with its collector on the substrate, a lateral pnp with its base. */
  const substrate = Int32Array.from(elements, (e, k) => inner[(e.kind === "npn" ? C : B) + k] as number);
  const substrateAt = Int32Array.from(substrate, (node: Unknown) => builder.place(node, node));
  const at = new Int32Array(9 * count);
  for (let k = 0; k < count; k += 1) {
    const three = [C, B, E].map((lead) => inner[lead + k] as number);
    at.set(
      three.flatMap((row) => three.map((column) => builder.place(row, column))),
      9 * k,
    );
  }
  const firstState = builder.state(2 * count);
  const saturation = new Float64Array(count);
  const critical = new Float64Array(count);
  const straight = new Float64Array(count);
  const byForward = new Float64Array(count);
  const byReverse = new Float64Array(count);
  /** 1/V; 0 without Early effect. */
  const byEarly = new Float64Array(count);
  const byReverseEarly = new Float64Array(count);
  // Two junctions by transistor, base–emitter then base–collector: the last evaluation, V, A, S.
  const lastVolts = new Float64Array(2 * count).fill(Number.NaN);
  const lastAmps = new Float64Array(2 * count);
  const lastSiemens = new Float64Array(2 * count);
  const out = new Float64Array(2);

  function evaluate(j: number, v: number, k: number): void {
    if (Math.abs(v - (lastVolts[j] as number)) <= sameVolts) return;
    junction(v, saturation[k] as number, thermal, straight[k] as number, out);
    lastVolts[j] = v;
    lastAmps[j] = out[0] as number;
    lastSiemens[j] = out[1] as number;
  }

  return {
    take(k) {
      const e = elements[k] as BipolarTransistor;
      saturation[k] = e.saturationAmps;
      critical[k] = criticalVolts(e.saturationAmps, thermal);
      straight[k] = straightVolts(e.saturationAmps, thermal);
      byForward[k] = 1 / e.forwardGain;
      byReverse[k] = 1 / e.reverseGain;
      byEarly[k] = e.earlyVolts ? 1 / e.earlyVolts : 0;
      byReverseEarly[k] = e.reverseEarlyVolts ? 1 / e.reverseEarlyVolts : 0;
      leads.forEach((lead, n) => {
        if (lead.k === k) leadSiemens[n] = 1 / (e[lead.field] as number);
      });
      lastVolts.fill(Number.NaN, 2 * k, 2 * k + 2);
    },
    stampFixed({ fixed }) {
      for (let n = 0; n < leadSiemens.length; n += 1) addConductance(fixed, leadAt, n, leadSiemens[n] as number);
      addEach(fixed, substrateAt, gmin);
    },
    load(eq) {
      const { x, residual, jacobian, currents, state } = eq;
      const fromLast = eq.start === "last";
      const fromNothing = eq.start === "nothing";
      for (let n = 0; n < leadSiemens.length; n += 1) {
        const from = leadOuter[n] as number;
        const to = leadInner[n] as number;
        const amps = (leadSiemens[n] as number) * ((x[from] as number) - (x[to] as number));
        add(residual, from, amps);
        add(residual, to, -amps);
      }
      for (let k = 0; k < count; k += 1) {
        const c = inner[C + k] as number;
        const b = inner[B + k] as number;
        const e = inner[E + k] as number;
        const s = sign[k] as number;
        const be = 2 * k;
        const bc = be + 1;
        const wantedBe = s * ((x[b] as number) - (x[e] as number));
        const wantedBc = s * ((x[b] as number) - (x[c] as number));
        const start = critical[k] as number;
        const end = straight[k] as number;
        let vbe = start;
        let vbc = 0;
        if (!fromNothing) {
          vbe = limitJunction(wantedBe, fromLast ? (state[firstState + be] as number) : start, thermal, start, end);
          vbc = limitJunction(wantedBc, fromLast ? (state[firstState + bc] as number) : start, thermal, start, end);
        }
        if (vbe !== wantedBe || vbc !== wantedBc) eq.unsettled += 1;
        state[firstState + be] = vbe;
        state[firstState + bc] = vbc;
        evaluate(be, vbe, k);
        evaluate(bc, vbc, k);

        const gBe = lastSiemens[be] as number;
        const gBc = lastSiemens[bc] as number;
        const gPi = gBe * (byForward[k] as number) + gmin;
        const gMu = gBc * (byReverse[k] as number) + gmin;
        const atBe = lastVolts[be] as number;
        const atBc = lastVolts[bc] as number;
        const overBe = wantedBe - atBe;
        const overBc = wantedBc - atBc;
        // Early effect: the base gets thinner as the voltage at its far side grows.
        const across = (lastAmps[be] as number) - (lastAmps[bc] as number);
        const thinner = 1 - atBc * (byEarly[k] as number) - atBe * (byReverseEarly[k] as number);
        const gForward = gBe * thinner - across * (byReverseEarly[k] as number);
        const gReverse = gBc * thinner + across * (byEarly[k] as number);
        const gOut = gReverse + gMu;
        const backBc = (lastAmps[bc] as number) * (byReverse[k] as number) + gmin * atBc + gMu * overBc;
        const collector = s * (across * thinner + gForward * overBe - gReverse * overBc - backBc);
        const base = s * ((lastAmps[be] as number) * (byForward[k] as number) + gmin * atBe + gPi * overBe + backBc);
        const sub = substrate[k] as number;
        const leak = gmin * (x[sub] as number);
        add(residual, c, collector);
        add(residual, b, base);
        add(residual, e, -collector - base);
        add(residual, sub, leak);

        const p = 9 * k;
        add(jacobian, at[p] as number, gOut);
        add(jacobian, at[p + 1] as number, gForward - gOut);
        add(jacobian, at[p + 2] as number, -gForward);
        add(jacobian, at[p + 3] as number, -gMu);
        add(jacobian, at[p + 4] as number, gPi + gMu);
        add(jacobian, at[p + 5] as number, -gPi);
        add(jacobian, at[p + 6] as number, gMu - gOut);
        add(jacobian, at[p + 7] as number, gOut - gForward - gPi - gMu);
        add(jacobian, at[p + 8] as number, gForward + gPi);

        const first = firstCurrent + 3 * k;
        currents[first] = collector + (s > 0 ? leak : 0);
        currents[first + 1] = base + (s > 0 ? 0 : leak);
        currents[first + 2] = -collector - base;
      }
    },
  };
}
