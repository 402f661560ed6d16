// Contacts and fuses: resistors that turn over, by hand, at given instants, by a coil's current or by their own warmth.
//
// Does not know: what a relay costs, how long its armature takes.
import type { DeviceFamily, EquationBuilder, TurningFamily } from "../equations.ts";
import type { Fuse, Switch } from "../netlist.ts";
import { addConductance, conductancePlaces } from "./stamp.ts";

/** Ω of an open contact, common practice, no source. */
const openOhms = 1e9;
/** A fuse is asked again after this share of the time in which it cools. */
const fuseStep = 1 / 50;
const usualReset = 0.5;

/** Resistors whose ohms are told by `ohmsOf` at every restamp; the number beside the current is the state. */
function turnable(
  ends: readonly { readonly a: string; readonly b: string }[],
  builder: EquationBuilder,
  firstCurrent: number,
  ohmsOf: (k: number) => number,
  state: Float64Array,
): Pick<DeviceFamily, "stampFixed" | "load"> {
  const count = ends.length;
  const a = Int32Array.from(ends, (e) => builder.node(e.a));
  const b = Int32Array.from(ends, (e) => builder.node(e.b));
  const at = conductancePlaces(builder, a, b);
  const siemens = new Float64Array(count);
  return {
    stampFixed({ fixed }) {
      for (let k = 0; k < count; k += 1) {
        siemens[k] = 1 / ohmsOf(k);
        addConductance(fixed, at, k, siemens[k] as number);
      }
    },
    load({ x, residual, currents }) {
      for (let k = 0; k < count; k += 1) {
        const from = a[k] as number;
        const to = b[k] as number;
        const amps = (siemens[k] as number) * ((x[from] as number) - (x[to] as number));
        residual[from] = (residual[from] as number) + amps;
        residual[to] = (residual[to] as number) - amps;
        currents[firstCurrent + 2 * k] = amps;
        currents[firstCurrent + 2 * k + 1] = state[k] as number;
      }
    },
  };
}

/** @param currentOf where the current of an element is kept. */
export function switches(
  elements: readonly Switch[],
  builder: EquationBuilder,
  firstCurrent: number,
  currentOf: (id: string) => number,
): TurningFamily {
  const closed = new Float64Array(elements.length);
  const said = new Float64Array(elements.length).fill(Number.NaN);
  const ohmsOf = (k: number) => {
    const { onOhms, offOhms = openOhms } = elements[k] as Switch;
    return closed[k] === 1 ? onOhms : offOhms;
  };
  const coils = elements.map(({ coil }) => (coil === undefined ? -1 : currentOf(coil)));

  /** How contact k wants to stand with this current in its coil. */
  function wanted(currents: Float64Array, k: number): number {
    const at = coils[k] as number;
    if (at < 0) return closed[k] as number;
    const { pullInAmps = 0, dropOutAmps = pullInAmps, opensWhenPulled = 0 } = elements[k] as Switch;
    const amps = Math.abs(currents[at] as number);
    const pulled = closed[k] === 1 ? opensWhenPulled === 0 : opensWhenPulled === 1;
    const stays = pulled ? amps >= dropOutAmps : amps >= pullInAmps;
    return stays === (opensWhenPulled === 0) ? 1 : 0;
  }

  return {
    take(k) {
      const now = elements[k]?.closed ?? 0;
      // Another number was changed: how it stands by now is not told anew.
      if (said[k] === now) return;
      said[k] = now;
      closed[k] = now === 0 ? 0 : 1;
    },
    ...turnable(elements, builder, firstCurrent, ohmsOf, closed),
    longestStep: () => Number.POSITIVE_INFINITY,
    nextTurn(seconds) {
      let next = Number.POSITIVE_INFINITY;
      for (const { turns = [] } of elements) for (const turn of turns) if (turn > seconds && turn < next) next = turn;
      return next;
    },
    wantsTurn({ currents }) {
      for (let k = 0; k < elements.length; k += 1) if (wanted(currents, k) !== closed[k]) return true;
      return false;
    },
    pass({ currents }, stepSeconds, seconds) {
      let turned = false;
      elements.forEach(({ turns = [] }, k) => {
        const before = closed[k] as number;
        closed[k] = wanted(currents, k);
        for (const turn of turns) if (turn > seconds - stepSeconds && turn <= seconds) closed[k] = 1 - (closed[k] as number);
        if (closed[k] !== before) turned = true;
      });
      return turned;
    },
  };
}

/** Warmth is power over the power of `holdAmps`, followed exactly for a power that stays the same during a step. */
export function fuses(elements: readonly Fuse[], builder: EquationBuilder, firstCurrent: number): TurningFamily {
  const count = elements.length;
  const tripped = new Float64Array(count);
  const warmth = new Float64Array(count);
  const ohmsOf = (k: number) => {
    const { ohms, trippedOhms } = elements[k] as Fuse;
    return tripped[k] === 1 ? trippedOhms : ohms;
  };

  /** What warmth fuse k has after so many seconds at its present current. */
  function warmthAfter(currents: Float64Array, k: number, seconds: number): number {
    const { ohms, holdAmps, coolSeconds } = elements[k] as Fuse;
    const amps = currents[firstCurrent + 2 * k] as number;
    const final = (amps * amps * ohmsOf(k)) / (holdAmps * holdAmps * ohms);
    return final + ((warmth[k] as number) - final) * Math.exp(-seconds / coolSeconds);
  }

  function wanted(k: number, warm: number): number {
    return tripped[k] === 1 ? (warm > (elements[k]?.resetWarmth ?? usualReset) ? 1 : 0) : warm >= 1 ? 1 : 0;
  }

  const said = new Float64Array(count).fill(Number.NaN);
  return {
    take(k) {
      const { tripped: now = 0, warmth: warm = now } = elements[k] as Fuse;
      if (said[k] === now) return;
      said[k] = now;
      tripped[k] = now === 0 ? 0 : 1;
      warmth[k] = warm;
    },
    ...turnable(elements, builder, firstCurrent, ohmsOf, tripped),
    longestStep: () => Math.min(...elements.map(({ coolSeconds }) => coolSeconds * fuseStep)),
    nextTurn: () => Number.POSITIVE_INFINITY,
    wantsTurn({ currents }, seconds) {
      for (let k = 0; k < count; k += 1) if (wanted(k, warmthAfter(currents, k, seconds)) !== tripped[k]) return true;
      return false;
    },
    pass({ currents }, seconds) {
      let turned = false;
      for (let k = 0; k < count; k += 1) {
        warmth[k] = warmthAfter(currents, k, seconds);
        const now = wanted(k, warmth[k] as number);
        if (now !== tripped[k]) turned = true;
        tripped[k] = now;
      }
      return turned;
    },
  };
}
