// A single junction against its formula, its slope against differences, and what limiting may and may not do.
import { expect, test } from "vitest";
import { breakdownKnee, criticalVolts, junction, limitJunction, straightVolts, thermalVoltage } from "./junction.ts";

const vt = thermalVoltage(27);
const at = (v: number, is: number, volts: number) => {
  const out = new Float64Array(2);
  junction(v, is, volts, straightVolts(is, volts), out);
  return { amps: out[0] as number, siemens: out[1] as number };
};

test("kT/q at 27 °C is 25.864917 mV (CODATA 2014)", () => expect(vt).toBeCloseTo(0.025864917, 9));

test("forward it is IS·(exp(v/vt) − 1)", () => {
  for (const v of [-0.05, 0, 0.1, 0.6, 0.7]) expect(at(v, 1e-14, vt).amps).toBeCloseTo(1e-14 * (Math.exp(v / vt) - 1), 18);
});

const kinds: [name: string, saturationAmps: number, volts: number][] = [
  ["silicon", 1e-14, vt],
  ["red LED", 7.585e-11, 3.828 * vt],
  ["blue LED", 1e-24, 2.2 * vt],
  ["Schottky", 3.2e-5, 1.37 * vt],
];
for (const [name, is, volts] of kinds) {
  const critical = criticalVolts(is, volts);
  const straight = straightVolts(is, volts);

  test(`${name}: the slope is that of the curve, also where pieces meet`, () => {
    const h = 1e-7 * volts;
    for (const v of [-9, -3.1 * volts, -2.9 * volts, 0.2, critical, straight - volts, straight + volts]) {
      const difference = (at(v + h, is, volts).amps - at(v - h, is, volts).amps) / (2 * h);
      const { amps, siemens } = at(v, is, volts);
      expect(Math.abs(siemens - difference)).toBeLessThan(1e-5 * siemens + (1e-8 * (Math.abs(amps) + is)) / volts);
    }
  });

  test(`${name}: pieces meet without a step`, () => {
    for (const edge of [-3 * volts, straight]) {
      const [below, above] = [at(edge - 1e-12, is, volts).amps, at(edge + 1e-12, is, volts).amps];
      expect(Math.abs(above - below)).toBeLessThan(1e-6 * Math.abs(above) + 1e-9 * is);
    }
  });

  test(`${name}: never overflows`, () => {
    for (const v of [-1e6, 1e3, 1e6]) expect(Number.isFinite(at(v, is, volts).amps)).toBe(true);
  });

  test(`${name}: Newton with limiting finds the voltage of any current in 15 passes`, () => {
    for (let decade = -9; decade <= 0; decade += 0.5) {
      const wanted = 10 ** decade;
      if (wanted < 10 * is) continue;
      let v = critical;
      let passes = 0;
      for (; passes < 15; passes += 1) {
        const { amps, siemens } = at(v, is, volts);
        const next = v - (amps - wanted) / siemens;
        if (Math.abs(next - v) < 1e-9) break;
        v = limitJunction(next, v, volts, critical, straight);
      }
      expect(v).toBeCloseTo(volts * Math.log(1 + wanted / is), 7);
      expect(passes).toBeLessThan(15);
    }
  });

  test(`${name}: small steps are never changed`, () => {
    for (const previous of [-5, 0, critical, critical + 3 * volts])
      for (const part of [-0.4, 0, 0.4, 1.9]) {
        const v = previous + part * volts;
        expect(limitJunction(v, previous, volts, critical, straight)).toBe(v);
      }
  });
}

test("a Zener carries its breakdown current at its breakdown voltage", () => {
  for (const [bv, ibv, is, n] of [
    [5.1, 5e-3, 1e-14, 1],
    [6, 1e-3, 1e-6, 1.7],
    [30, 1e-3, 1e-12, 1],
  ] as const) {
    const knee = breakdownKnee(bv, ibv, is, n * vt, vt);
    // SPICE adds the linear leak IS·(knee/vt − 1) to the exponential when it fits the knee.
    expect(is * (Math.exp((bv - knee) / (n * vt)) - 1 + knee / vt)).toBeCloseTo(ibv, 9);
  }
});

test("a breakdown current below the leak leaves the knee at the breakdown voltage", () =>
  expect(breakdownKnee(6, 1e-9, 1e-9, 1.2 * vt, vt)).toBe(6));
