// Facts of the board against the ATmega328P data sheet (8271H, 2014; section 29) and sums done by hand.
import { expect, test } from "vitest";
import { boardFacts, boardLegs } from "./boardFacts.ts";

const { pin, portGroups, chip, pwm, fuse, regulator } = boardFacts;
const sum = (pins: readonly string[], amps: Record<string, number>) => pins.reduce((total, name) => total + (amps[name] ?? 0), 0);
const eight = (amps: number) => Object.fromEntries(Array.from({ length: 8 }, (_, i) => [`D${i}`, amps]));

test("every pin is in one group of each kind", () => {
  const pins = boardLegs.filter((leg) => /^[DA]\d+$/.test(leg));
  expect(pins.length).toBe(20);
  for (const groups of [portGroups.source, portGroups.sink])
    expect(groups.flatMap((g) => [...g.pins]).sort()).toEqual([...pins].sort());
});
test("eight LEDs at 18 mA given by D0–D7: 90 and 54 mA, within 150 mA each and 200 mA in all", () => {
  const sums = portGroups.source.map((group) => sum(group.pins, eight(0.018)));
  expect(sums.map((s) => Math.round(s * 1000))).toEqual([90, 54]);
  for (const [i, group] of portGroups.source.entries()) expect(sums[i]!).toBeLessThan(group.amps);
  expect(0.144).toBeLessThan(chip.unsafeAmps.value);
});
test("taken by the same pins at 21 mA: 105 mA through D0–D4, over 100 mA though each pin bears it", () => {
  const over = portGroups.sink.filter((group) => sum(group.pins, eight(0.021)) > group.amps);
  expect(over.map((group) => [...group.pins])).toEqual([["D0", "D1", "D2", "D3", "D4"]]);
  expect(0.021).toBeLessThan(pin.unsafeAmps.value);
});
test("a pin at 20 mA still has 4.2 V at worst (table 29-1)", () =>
  expect(5 - 0.02 * pin.worstOutputOhms.value).toBeCloseTo(4.2, 9));
test("a pull-up on 5 V carries 0.1 to 0.25 mA", () => {
  expect(5 / pin.mostPullUpOhms.value).toBeCloseTo(0.0001, 9);
  expect(5 / pin.leastPullUpOhms.value).toBeCloseTo(0.00025, 9);
});
test("the lowest voltage for 16 MHz lies on the line from 10 MHz, 2.7 V to 20 MHz, 4.5 V (section 29.3)", () =>
  expect(chip.leastVoltsForClock.value).toBeCloseTo(2.7 + ((16 - 10) / (20 - 10)) * (4.5 - 2.7), 9));
test("PWM: 490.1961 and 976.5625 Hz", () => {
  expect(pwm.hertz.value).toBeCloseTo(490.1961, 4);
  expect(pwm.fastHertz.value).toBe(976.5625);
});
test("the fuse trips above what it holds, and VIN needs what regulator and diode take", () => {
  expect(fuse.holdAmps.value).toBeLessThan(fuse.tripAmps.value);
  expect(fuse.leastOhms.value).toBeLessThan(fuse.ohms.value);
  expect(regulator.leastInputVolts.value).toBeCloseTo(5 + regulator.dropoutVolts.value + regulator.diodeVolts.value, 9);
});
test("every fact has a source", () => {
  const walk = (thing: unknown): void => {
    if (typeof thing !== "object" || thing === null) return;
    if ("value" in thing) expect(typeof (thing as { source?: unknown }).source).toBe("string");
    Object.values(thing).forEach(walk);
  };
  walk(boardFacts);
});
