// Values that a part can have, and those that would break the arithmetic: 0 Ω, negative farads, NaN, 1e300 V.
//
// The limits are wide on purpose (a milliohm lead, a 1e-24 A blue LED, a lightning's megavolt): they keep the equations
// finite, they do not judge a design. 0 Ω is refused for a resistor because a wire is a shared node, not an element.
// Does not know: preferred values, ratings.
import type { Element } from "./netlist.ts";
import type { ElementKind } from "./terminals.ts";
import { isFitWave } from "./waveform.ts";

interface Range {
  readonly least: number;
  readonly most: number;
  /** 0 is allowed too, although it lies below `least`. */
  readonly orZero?: boolean;
  /** The field may be missing. */
  readonly optional?: boolean;
}

const resistance: Range = { least: 1e-6, most: 1e15 };
const seriesResistance: Range = { ...resistance, orZero: true };
const emf: Range = { least: -1e6, most: 1e6 };
const supplyVolts: Range = { least: 0, most: 1e6 };
const current: Range = { least: -1e6, most: 1e6 };
const limit: Range = { least: 0, most: 1e6 };
const saturation: Range = { least: 1e-60, most: 1 };
const gain: Range = { least: 1e-6, most: 1e9 };
const share: Range = { least: 0, most: 1 };
const yesOrNo: Range = { least: 0, most: 1 };
const optional = (range: Range): Range => ({ ...range, optional: true });

const early: Range = { least: 0, most: 1e9 };

const transistor = {
  saturationAmps: saturation,
  forwardGain: gain,
  reverseGain: gain,
  baseOhms: optional(seriesResistance),
  collectorOhms: optional(seriesResistance),
  emitterOhms: optional(seriesResistance),
  earlyVolts: optional(early),
  reverseEarlyVolts: optional(early),
};
const mosfet = {
  thresholdVolts: { least: -1e3, most: 1e3 },
  transconductance: { least: 1e-12, most: 1e6 },
  lambda: { least: 0, most: 10, optional: true },
};

/** Fields with a number, by kind. */
const ranges: Record<ElementKind, Record<string, Range>> = {
  resistor: { ohms: resistance },
  voltageSource: { volts: emf },
  currentSource: { amps: current },
  diode: {
    saturationAmps: saturation,
    emission: { least: 0.1, most: 100 },
    seriesOhms: seriesResistance,
    breakdownVolts: { least: 0.1, most: 1e6, optional: true },
    breakdownAmps: { least: 1e-15, most: 1e3, optional: true },
    junctionFarads: { least: 0, most: 1, optional: true },
    transitSeconds: { least: 0, most: 1, optional: true },
  },
  npn: transistor,
  pnp: transistor,
  nmos: mosfet,
  pmos: mosfet,
  limitedSource: { volts: supplyVolts, ohms: seriesResistance, limitAmps: limit },
  regulator: {
    volts: supplyVolts,
    dropoutVolts: { least: 0, most: 1e3 },
    outputOhms: seriesResistance,
    quiescentAmps: { least: 0, most: 1e3 },
    limitAmps: optional(limit),
  },
  capacitor: { farads: { least: 1e-18, most: 1e6 }, initialVolts: optional(emf) },
  inductor: { henries: { least: 1e-15, most: 1e6 }, initialAmps: optional(current) },
  switch: {
    closed: yesOrNo,
    onOhms: resistance,
    offOhms: optional(resistance),
    pullInAmps: optional(limit),
    dropOutAmps: optional(limit),
    opensWhenPulled: optional(yesOrNo),
  },
  fuse: {
    ohms: resistance,
    trippedOhms: resistance,
    holdAmps: { least: 1e-6, most: 1e6 },
    coolSeconds: { least: 1e-6, most: 1e6 },
    resetWarmth: optional(share),
    tripped: optional(yesOrNo),
    warmth: optional(share),
  },
  battery: {
    volts: supplyVolts,
    emptyVolts: supplyVolts,
    ohms: resistance,
    emptyOhms: resistance,
    ampHours: { least: 1e-9, most: 1e6 },
    charge: share,
  },
  motor: {
    ohms: resistance,
    henries: { least: 0, most: 1e6 },
    k: { least: 1e-9, most: 1e6 },
    inertia: { least: 1e-15, most: 1e6 },
    drag: { least: 0, most: 1e6 },
    friction: { least: 0, most: 1e6 },
    stalled: optional(yesOrNo),
  },
};

/** Whether an element of this kind has such a number. */
export function hasValue(kind: ElementKind, field: string): boolean {
  return Object.hasOwn(ranges[kind], field);
}

/** Whether a number is one that a part can have; undefined is for fields that may be missing. */
export function isFitValue(kind: ElementKind, field: string, value: unknown): boolean {
  const range = ranges[kind][field];
  if (range === undefined) return false;
  if (value === undefined) return range.optional === true;
  if (typeof value !== "number") return false;
  return (value >= range.least && value <= range.most) || (range.orZero === true && value === 0);
}

/** Whether 0 in this field means another wiring than any other value: no inner node, or an ideal source. */
export function zeroChangesWiring(kind: ElementKind, field: string): boolean {
  return ranges[kind][field]?.orZero === true;
}

/** @returns the fields whose values no part has, with the value (NaN when it is missing or no number). */
export function findUnfitValues(element: Element): { field: string; value: number }[] {
  if ("wave" in element && element.wave !== undefined && !isFitWave(element.wave)) return [{ field: "wave", value: Number.NaN }];
  return Object.keys(ranges[element.kind]).flatMap((field) => {
    const value = (element as unknown as Record<string, unknown>)[field];
    if (isFitValue(element.kind, field, value)) return [];
    return [{ field, value: typeof value === "number" ? value : Number.NaN }];
  });
}
