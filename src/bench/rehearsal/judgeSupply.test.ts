// Each supply of a class with the same loads: what it gives, how far it sags, how long it lasts, what gets hot, how long the cable
// may be. Expected: Ohm's law with the figures of the catalogue, and capacities over currents.
import { describe, expect, test } from "vitest";
import { ourLesson, smallLesson } from "./lesson.fixture.ts";
import { rehearseOnce } from "./rehearseOnce.ts";

/** A load between 5 V and ground for 45 minutes; 0 for the board alone. */
const load = (ohms: number) =>
  smallLesson(
    `R1: { part: resistor, ohms: ${ohms === 0 ? 1e6 : ohms}, watts: 50 }`,
    "board.5V R1.1\n R1.2 board.GND",
    "{ at: 3s, expect: { board: running } }",
    "void setup() {} void loop() { delay(10); }",
  );
const on = (supply: string, ohms: number) => rehearseOnce(load(ohms), { supply }).supply!;
const own = 5 / 0.045;
const beside = (ohms: number) => (ohms * own) / (ohms + own);

describe("a supply of 5 V through cable and fuse", () => {
  for (const [supply, inside] of [
    ["usb-port 500mA", 0.1],
    ["usb-port 900mA", 0.1],
    ["adapter 2000mA", 0.1],
    ["power-bank", 0.1],
  ] as const)
    test(`${supply}: 20 Ω sag to 5 V · R / (R + ${inside} + 0.546 + 0.4)`, () => {
      const expected = (5 * beside(20)) / (beside(20) + inside + 0.546 + 0.4);
      const found = on(supply, 20);
      expect(found.leastVolts).toBeCloseTo(expected, 4);
      expect(found.amps).toBeCloseTo(expected / beside(20), 4);
      expect(found.leastVoltsMs).toBe(0);
      expect(found.fits).toBe("fits");
    });
  test("hours: 6290 mAh of a bank of 10 000 mAh over the current; lessons of 45 minutes, whole ones", () => {
    const found = on("power-bank", 20);
    expect(found.hours).toBeCloseTo(6.29 / found.amps, 4);
    expect(found.lessons).toBe(Math.floor(6.29 / found.amps / 0.75));
  });
  test("a port does not empty", () =>
    expect([on("usb-port 500mA", 20).hours, on("usb-port 500mA", 20).lessons]).toEqual([null, null]));
});

describe("a bank switches itself off below 60 mA", () => {
  // The board alone takes 45 mA; with R it takes 5 V / R more.
  for (const [milliamps, fits] of [
    [57, "does not fit"],
    [63, "fits"],
  ] as const)
    test(`${milliamps} mA: ${fits}`, () => {
      const found = on("power-bank", 1 / (1 / (5000 / milliamps - 1.046) - 1 / own));
      expect(found.amps * 1000).toBeCloseTo(milliamps, 1);
      expect([found.fits, found.why]).toEqual([fits, fits === "fits" ? [] : ["switches-itself-off"]]);
      expect(found.lessons).toBe(fits === "fits" ? Math.floor(6.29 / found.amps / 0.75) : 0);
    });
});

describe("a bank that is asked for little for a while may sleep, from 5 s on", () => {
  // 100 mA more than the board's 45 mA for six seconds, then the board alone: more than 60 mA on average.
  for (const [seconds, fits] of [
    [4.8, "fits"],
    [5.2, "undetermined"],
  ] as const)
    test(`${seconds} s: ${fits}`, () => {
      const lesson = smallLesson(
        "S1: { part: button, bounce-milliseconds: 0 }\n R1: { part: resistor, ohms: 50, watts: 5 }",
        "board.5V S1.1\n S1.2 R1.1\n R1.2 board.GND",
        `{ at: 0s, set: { S1.pressed: true } }
         { at: 6s, set: { S1.pressed: false } }
         { at: ${6000 + 1000 * seconds}ms, set: { S1.pressed: true } }
         { at: 15s, expect: { board: running } }`,
        "void setup() {} void loop() { delay(10); }",
      );
      const found = rehearseOnce(lesson, { supply: "power-bank" }).supply!;
      expect(found.amps).toBeGreaterThan(0.06);
      expect([found.fits, found.why]).toEqual([fits, fits === "fits" ? [] : ["switches-itself-off"]]);
    });
});

describe("the cable", () => {
  // V · R / (R + 0.1 + 0.4 + cable) = 3.78 V; 2 · 0.2129 Ω a metre of AWG 28 (ASTM B258) and 0.12 Ω of contacts.
  for (const ohms of [8, 10, 12, 14])
    test(`${ohms} Ω: as long as 3.78 V are left`, () => {
      const cable = beside(ohms) * (5 / 3.78 - 1) - 0.5;
      const metres = Math.min(5, (cable - 0.12) / (2 * 0.2129));
      expect(on("adapter 2000mA", ohms).cableMetres).toBeCloseTo(metres, 1);
    });
  test("a light load bears any", () => expect(on("usb-port 500mA", 1000).cableMetres).toBe(5));
  test("a battery at VIN has none", () => expect(on("battery-9v", 1000).cableMetres).toBeNull());
});

describe("batteries", () => {
  test("9 V block: 550 mAh to 6 V; the regulator's case 145 K/W over the room", () => {
    const found = on("battery-9v", 100);
    // 5 V at 100 Ω and the board, 6 mA for the regulator.
    const amps = 5 / beside(100) + 0.006;
    expect(found.amps).toBeCloseTo(amps, 3);
    expect(found.hours).toBeCloseTo(0.55 / amps, 1);
    expect(found.lessons).toBe(Math.floor(0.55 / amps / 0.75));
    expect(found.hottest?.part).toBe("board");
    expect(found.hottest?.celsius).toBeCloseTo(25 + 145 * (9 - 1.7 * amps - 0.7 - 5) * amps, 0);
    expect(found.hottest?.touch).toBe("hot");
  });
  // 145 K/W from room to case, plastic burns at a touch from 85 °C on (ISO 13732-1): 60 K / 145 K/W / 3.3 V are 125 mA of an
  // adapter of 9 V.
  for (const [milliamps, fits] of [
    [123, "fits"],
    [128, "does not fit"],
  ] as const)
    test(`9 V from an adapter at ${milliamps} mA: the regulator's case, ${fits}`, () => {
      const lesson = smallLesson(
        `PS1: { part: adapter, volts: 9, milliamps: 20000, ohms: 1m }
         R1: { part: resistor, ohms: ${5 / (milliamps / 1000 - 0.045 - 0.006)}, watts: 50 }`,
        "PS1.plus board.VIN\n board.5V R1.1\n R1.2 PS1.minus board.GND",
        "{ at: 3s, expect: { board: running } }",
        "void setup() {} void loop() { delay(10); }",
      );
      const found = rehearseOnce(lesson).supply!;
      expect(found.hottest?.celsius).toBeCloseTo(25 + 145 * 3.3 * (milliamps / 1000), 0);
      expect([found.fits, found.why]).toEqual([fits, fits === "fits" ? [] : ["regulator-hot"]]);
    });
  test("rechargeable cells on the 5 V pin: 5 V behind 0.2 Ω, and at most 4 · 1.4 V when fresh, which the chip bears", () => {
    const found = on("battery-4aa nimh", 20);
    expect(found.leastVolts).toBeCloseTo((5 * beside(20)) / (beside(20) + 0.2), 3);
    expect(found.fits).toBe("fits");
    // 1900 mAh, as far as 4 · 1.1 V less what three times 0.2 Ω take still carries the chip: to the end.
    expect(found.hours).toBeCloseTo(1.9 / found.amps, 3);
  });
  test("alkaline cells through the regulator: 6 V − 1.9 V − 1 Ω · I is what is left, and it is little", () => {
    const found = on("battery-4aa", 100);
    const rail = 4.1 / (1 + 1 / beside(100));
    expect(found.leastVolts).toBeGreaterThan(rail - 0.02);
    expect(found.leastVolts).toBeLessThan(rail + 0.02);
  });
});

describe("every lesson on every supply: what always holds", () => {
  const lessons = [
    "lighthouse",
    "signal-lamp",
    "quay-lights",
    "foghorn",
    "quay-lamp-at-dusk",
    "dimmer",
    "barrier",
    "water-temperature",
  ];
  // [item, its usual volts, Ω inside] as the catalogue has them.
  const supplies: [item: string, volts: number, ohms: number][] = [
    ["usb-port 500mA", 5, 0.1],
    ["usb-port 900mA", 5, 0.1],
    ["adapter 1000mA", 5, 0.1],
    ["adapter 2000mA", 5, 0.1],
    ["power-bank", 5, 0.1],
    ["battery-9v", 9, 1.7],
    ["battery-4aa alkaline", 6, 1],
    ["battery-4aa nimh", 5, 0.2],
  ];
  for (const id of lessons)
    test(id, () => {
      const lesson = ourLesson(id);
      for (const [item, volts, ohms] of supplies) {
        const once = rehearseOnce(lesson, { supply: item });
        const s = once.supply!;
        const about = `${id} on ${item}`;
        expect(s.fits === "fits", about).toBe(s.why.length === 0);
        expect(s.amps, about).toBeLessThanOrEqual(s.peakAmps + 1e-9);
        // The board alone takes 45 mA at 5 V, so at less voltage a little less.
        expect(s.amps, about).toBeGreaterThan((0.045 * s.leastVolts) / 5 - 1e-6);
        // Nothing behind a resistance has more than what is before it; a regulator gives 5 V at most.
        expect(s.leastVolts, about).toBeLessThanOrEqual(Math.min(volts - ohms * s.amps, item === "battery-9v" ? 5 : 6) + 1e-6);
        expect(s.hours === null, about).toBe(/port|adapter/.test(item));
        expect(s.lessons === null, about).toBe(s.hours === null);
        expect(s.cableMetres === null, about).toBe(/battery/.test(item));
        expect(s.hottest?.celsius, about).toBeGreaterThan(25);
        expect(s.regulatorCelsius === null, about).toBe(!/9v|alkaline/.test(item));
        // A surface that burns is a hazard, and no supply that makes it does.
        const burns = once.hazards.some((h) => h.code === "hot-surface" && h.severity === "unsafe" && h.part === "board");
        if (burns) expect(s.fits, about).toBe("does not fit");
      }
    });
});
