// For each hazard a circuit just inside its limit and one just outside: 2 % less than the data sheet's figure, and 2 % more.
//
// The part that brings the figure there is computed by hand from Ohm's law and the equations of diode and transistor (Shockley;
// Ebers and Moll, in the forms of Sedra and Smith, Microelectronic Circuits), never from a run of ours. A supply of 5 V behind
// 1 mΩ holds the 5 V net, so that nothing sags.
import { describe, expect, test } from "vitest";
import { ledColour } from "../parts/index.ts";
import { smallLesson } from "./lesson.fixture.ts";
import { rehearseOnce } from "./rehearseOnce.ts";
import { type Hazard, type HazardCode, hazardCodes } from "./result.ts";

/** V: kT/q at 27 °C. */
const thermal = 0.025864917;
/** Ω of a pin that drives, and A that the board takes by itself: figures of the catalogue. */
const [pinOhms, ownAmps] = [25, 0.045];

interface Circuit {
  readonly parts: string;
  readonly nets: string;
  readonly setup?: string;
  readonly steps?: string;
  /** Left out: the 5 V that hold. */
  readonly supply?: "usb-port 500mA" | "own";
}
interface Case {
  readonly code: HazardCode;
  readonly name: string;
  readonly severity: Hazard["severity"];
  readonly part: string;
  readonly limit: number;
  readonly unit: Hazard["unit"];
  /** The circuit in which the figure is x. */
  readonly at: (x: number) => Circuit;
}

const out = (pins: readonly string[], level: "HIGH" | "LOW") =>
  pins.map((p) => `pinMode(${p.replace("D", "")}, OUTPUT); digitalWrite(${p.replace("D", "")}, ${level});`).join(" ");
/** A resistor big enough to bear it, so that only the hazard in question is looked at. */
const big = (name: string, ohms: number) => `${name}: { part: resistor, ohms: ${ohms.toPrecision(9)}, watts: 50 }`;
const across = (ohms: number): Circuit => ({ parts: big("R1", ohms), nets: "board.5V R1.1\n R1.2 board.GND" });
const loads = (pins: readonly string[], each: number, level: "HIGH" | "LOW"): Circuit => ({
  parts: pins.map((p) => big(`R${p}`, 5 / each - pinOhms)).join("\n"),
  nets: `${pins.map((p) => `board.${p} R${p}.1`).join("\n")}
    board.${level === "HIGH" ? "GND" : "5V"} ${pins.map((p) => `R${p}.2`).join(" ")}`,
  setup: out(pins, level),
});
const ledVolts = (amps: number) => {
  const { saturationAmps, emission, seriesOhms } = ledColour("red");
  return emission * thermal * Math.log(amps / saturationAmps + 1) + amps * seriesOhms;
};
const onPin9 = (amps: number) => loads(["D9"], amps, "HIGH");
const ledAt = (amps: number): Circuit => ({
  parts: `${big("R1", (5 - ledVolts(amps)) / amps)}\n LED1: { part: led, colour: red }`,
  nets: "board.5V R1.1\n R1.2 LED1.anode\n LED1.cathode board.GND",
});
/** Another supply beside the board's, its minus at GND. */
const second = (volts: number, plusTo: string, more = ""): Circuit => ({
  parts: `PS2: { part: adapter, volts: ${volts}, milliamps: 20000, ohms: 1m }\n ${more}`,
  nets: `PS2.plus ${plusTo}\n PS2.minus board.GND`,
});
/** An adapter of so many volts as the board's supply at a socket. */
const fedAt = (socket: "5V" | "VIN", volts: number, load = 1000): Circuit => ({
  parts: `PS1: { part: adapter, volts: ${volts}, milliamps: 20000, ohms: 1m }\n ${big("R1", load)}`,
  nets: `PS1.plus board.${socket}${socket === "5V" ? " R1.1" : "\n board.5V R1.1"}\n R1.2 PS1.minus board.GND`,
  supply: "own",
});
/** The load at which the regulator behind a 9 V adapter turns so much into heat: (9 − 0.7 − 5) V times the current. */
const regulatorAt = (celsius: number, kelvinPerWatt: number) => {
  const amps = (celsius - 25) / kelvinPerWatt / (9 - 0.7 - 5);
  // The regulator itself takes 6 mA.
  return fedAt("VIN", 9, 5 / (amps - ownAmps - 0.006));
};
/** V between collector and emitter of a saturated BC547: V_T·ln((1/α_R + β/β_R)/(1 − β/β_F)), β = I_C/I_B, and 0.6 Ω · I_C. */
const saturated = (amps: number, baseAmps: number, gain = 290) => {
  const forced = amps / baseAmps;
  return thermal * Math.log((5 / 4 + forced / 4) / (1 - forced / gain)) + 0.6 * amps;
};
/** 430 Ω leave about 10 mA for the base: 5 V less 0.75 V. */
const npnAt = (amps: number): Circuit => ({
  parts: `${big("R1", (5 - saturated(amps, 0.01)) / amps)}\n ${big("R2", 425)}\n Q1: { part: BC547 }`,
  nets: "board.5V R1.1 R2.1\n R1.2 Q1.collector\n R2.2 Q1.base\n Q1.emitter board.GND",
});
const pnpAt = (amps: number): Circuit => ({
  parts: `${big("R1", (5 - saturated(amps, 0.01)) / amps)}\n ${big("R2", 425)}\n Q1: { part: BC557 }`,
  nets: "board.5V Q1.emitter\n Q1.collector R1.1\n Q1.base R2.1\n board.GND R1.2 R2.2",
});
/** K·((V_GS − V_th)·v − v²/2) = I, 2 Ω at 5 V and a threshold of 2.1 V: Shichman and Hodges. */
const nmosAt = (amps: number): Circuit => {
  const [over, k] = [5 - 2.1, 1 / (2 * (5 - 2.1))];
  const volts = over - Math.sqrt(over ** 2 - (2 * amps) / k);
  return {
    parts: `${big("R1", (5 - volts) / amps)}\n Q1: { part: 2N7000 }`,
    nets: "board.5V R1.1 Q1.gate\n R1.2 Q1.drain\n Q1.source board.GND",
  };
};
/** An emitter follower from 12 V: what goes in at collector and base less what comes out at the emitter, by halving. */
const followerAt = (watts: number): Circuit => {
  const turns = (amps: number) => {
    const [collector, base] = [(amps * 290) / 291, amps / 291];
    const emitter = 5 - 10 * base - thermal * Math.log(collector / 2e-14 + 1);
    return { watts: 12 * collector + 5 * base - amps * emitter, ohms: emitter / amps };
  };
  let [low, high] = [0.001, 1];
  for (let i = 0; i < 100; i += 1) {
    const middle = (low + high) / 2;
    if (turns(middle).watts < watts) low = middle;
    else high = middle;
  }
  return {
    parts: `PS2: { part: adapter, volts: 12, milliamps: 20000, ohms: 1m }\n ${big("R1", turns(low).ohms)}\n Q1: { part: BC547 }`,
    nets: "PS2.plus Q1.collector\n board.5V Q1.base\n Q1.emitter R1.1\n R1.2 PS2.minus board.GND",
  };
};
const diodeAt = (amps: number): Circuit => {
  const volts = 1.752 * thermal * Math.log(amps / 2.52e-9 + 1) + 0.568 * amps;
  return {
    parts: `${big("R1", (5 - volts) / amps)}\n D1: { part: 1N4148 }`,
    nets: "board.5V R1.1\n R1.2 D1.anode\n D1.cathode board.GND",
  };
};
/** A coil of 1 Ω behind a key that carries 10 mA: L·I²/2 into 100 pF gives I·√(L/C). */
const coilAt = (volts: number): Circuit => ({
  parts: `L1: { part: inductor, henries: ${(1e-10 * (volts / 0.01) ** 2).toPrecision(9)}, ohms: 1 }
    B1: { part: button }
    ${big("R1", 5 / 0.01 - 1 - 0.1)}`,
  nets: "board.5V L1.1\n L1.2 B1.1\n B1.2 R1.1\n R1.2 board.GND",
  steps: "{ at: 100ms, set: { B1.pressed: true } }",
});
const nine = ["D5", "D6", "D7", "D8", "D9", "D10", "D11", "D12", "D13"];
const twelve = [...nine, "D2", "D3", "D4"];

const sheet = (
  code: HazardCode,
  name: string,
  limits: { caution?: number; unsafe?: number },
  rest: Pick<Case, "part" | "unit" | "at">,
) =>
  (["caution", "unsafe"] as const).flatMap((severity): Case[] => {
    const limit = limits[severity];
    return limit === undefined ? [] : [{ code, name, severity, limit, ...rest }];
  });

const cases: readonly Case[] = [
  // ATmega328P data sheet, section 29.1 and table 29-1.
  ...sheet("pin-overcurrent", "a pin gives", { caution: 0.02, unsafe: 0.04 }, { part: "D9", unit: "A", at: onPin9 }),
  ...sheet(
    "pin-overcurrent",
    "a pin takes",
    { caution: 0.02, unsafe: 0.04 },
    { part: "D9", unit: "A", at: (x) => loads(["D9"], x, "LOW") },
  ),
  ...sheet(
    "port-group-overcurrent",
    "five pins take",
    { caution: 0.1 },
    { part: "D0…D4", unit: "A", at: (x) => loads(["D0", "D1", "D2", "D3", "D4"], x / 5, "LOW") },
  ),
  ...sheet(
    "port-group-overcurrent",
    "nine pins give",
    { caution: 0.15 },
    { part: "D5…D13", unit: "A", at: (x) => loads(nine, x / 9, "HIGH") },
  ),
  ...sheet(
    "chip-overcurrent",
    "twelve pins give",
    { unsafe: 0.2 },
    { part: "board", unit: "A", at: (x) => loads(twelve, x / 12, "HIGH") },
  ),
  ...sheet(
    "pin-overvoltage",
    "a second supply at an input",
    { unsafe: 5.5 },
    { part: "D2", unit: "V", at: (x) => second(x, "board.D2") },
  ),
  ...sheet(
    "pin-negative",
    "a supply the wrong way round behind a divider",
    { unsafe: -0.5 },
    {
      part: "D2",
      unit: "V",
      at: (x) => ({
        parts: `PS2: { part: adapter, volts: 5, milliamps: 20000, ohms: 1m }\n ${big("R1", 1000 * (5 / -x - 1))}\n ${big("R2", 1000)}`,
        nets: "PS2.plus R2.2 board.GND\n PS2.minus R1.1\n R1.2 R2.1 board.D2",
      }),
    },
  ),
  ...sheet(
    "board-overvoltage",
    "at the 5 V pin",
    { caution: 5.5, unsafe: 6 },
    { part: "board", unit: "V", at: (x) => fedAt("5V", x) },
  ),
  // Common practice for VIN; data sheet NCP1117.
  ...sheet("board-overvoltage", "at VIN", { caution: 12, unsafe: 20 }, { part: "VIN", unit: "V", at: (x) => fedAt("VIN", x) }),
  ...sheet(
    "regulator-hot",
    "9 V at VIN",
    { caution: 125, unsafe: 150 },
    { part: "board", unit: "°C", at: (x) => regulatorAt(x, 160) },
  ),
  // USB 2.0, section 7.2.1. From 5 V to the board: port 0.1 Ω, cable 0.546 Ω, fuse 0.4 Ω.
  ...sheet(
    "usb-overcurrent",
    "a laptop's port",
    { caution: 0.5 },
    {
      part: "usb-port 500mA",
      unit: "A",
      at: (x) => ({ ...across(1 / (1 / (5 / x - 1.046) - ownAmps / 5)), supply: "usb-port 500mA" }),
    },
  ),
  // Catalogue table of 5 mm LEDs: 30 mA, tested at 20 mA.
  ...sheet("led-overcurrent", "a red LED", { caution: 0.02, unsafe: 0.03 }, { part: "LED1", unit: "A", at: ledAt }),
  // Data sheets BC547, BC557, 2N7000: 100, 100, 200 mA; 80 % of it to work with.
  ...sheet("transistor-overcurrent", "an NPN", { caution: 0.08, unsafe: 0.1 }, { part: "Q1", unit: "A", at: npnAt }),
  ...sheet("transistor-overcurrent", "a PNP", { caution: 0.08, unsafe: 0.1 }, { part: "Q1", unit: "A", at: pnpAt }),
  ...sheet("transistor-overcurrent", "a MOSFET", { caution: 0.16, unsafe: 0.2 }, { part: "Q1", unit: "A", at: nmosAt }),
  ...sheet("transistor-overload", "an emitter follower of 12 V", { unsafe: 0.5 }, { part: "Q1", unit: "W", at: followerAt }),
  // Data sheets of the 1N4148; LP2985 and older boards.
  ...sheet("part-overcurrent", "a small diode", { unsafe: 0.15 }, { part: "D1", unit: "A", at: diodeAt }),
  ...sheet(
    "part-overcurrent",
    "the 3.3 V outlet",
    { caution: 0.05, unsafe: 0.15 },
    {
      part: "3V3",
      unit: "A",
      at: (x) => ({ parts: big("R1", 3.3 / x - 0.5), nets: "board.3V3 R1.1\n R1.2 board.GND" }),
    },
  ),
  // Film resistor data sheets: U²/R.
  ...sheet(
    "resistor-overload",
    "a quarter watt",
    { unsafe: 0.25 },
    {
      part: "R1",
      unit: "W",
      at: (x) => ({ parts: `R1: { part: resistor, ohms: ${25 / x} }`, nets: "board.5V R1.1\n R1.2 board.GND" }),
    },
  ),
  // Data sheet NTCLE100E3: 500 mW; at 25 °C a thermistor has its printed value.
  ...sheet(
    "part-overload",
    "a thermistor",
    { unsafe: 0.5 },
    {
      part: "NTC1",
      unit: "W",
      at: (x) => ({ parts: `NTC1: { part: thermistor, ohms: ${25 / x} }`, nets: "board.5V NTC1.1\n NTC1.2 board.GND" }),
    },
  ),
  // ISO 13732-1: lacquer and plastic for a minute 60 °C, for a second 85 °C; bare metal 51 °C and 65 °C. 85 K at a quarter watt.
  ...sheet(
    "hot-surface",
    "a resistor",
    { caution: 60, unsafe: 85 },
    {
      part: "R1",
      unit: "°C",
      at: (x) => ({
        parts: `R1: { part: resistor, ohms: ${25 / ((x - 25) / (85 / 0.25))} }`,
        nets: "board.5V R1.1\n R1.2 board.GND",
      }),
    },
  ),
  ...sheet(
    "hot-surface",
    "a motor's can that is held",
    { caution: 51, unsafe: 65 },
    {
      part: "M1",
      unit: "°C",
      at: (x) => ({
        parts: `M1: { part: dc-motor, winding-ohms: ${25 / ((x - 25) / 25)} }`,
        nets: "board.5V M1.1\n M1.2 board.GND",
        steps: "{ at: 0s, set: { M1.held: true } }",
      }),
    },
  ),
  ...sheet(
    "hot-surface",
    "the board's regulator",
    { caution: 60, unsafe: 85 },
    { part: "board", unit: "°C", at: (x) => regulatorAt(x, 160 - 15) },
  ),
  // From memory: an electrolytic bears about 1 V backwards.
  ...sheet(
    "reversed-electrolytic",
    "behind a divider",
    { unsafe: 1 },
    {
      part: "C1",
      unit: "V",
      at: (x) => ({
        parts: `C1: { part: electrolytic, farads: 1u }\n ${big("R1", 100 * (5 / x - 1))}\n ${big("R2", 100)}`,
        nets: "board.5V R1.1\n R1.2 R2.1 C1.minus\n C1.plus R2.2 board.GND",
      }),
    },
  ),
  // Catalogue table of 5 mm LEDs: 5 V backwards.
  ...sheet(
    "reverse-overvoltage",
    "an LED turned round",
    { caution: 5 },
    {
      part: "LED1",
      unit: "V",
      at: (x) => ({
        parts: `PS2: { part: adapter, volts: ${x}, milliamps: 20000, ohms: 1m }\n LED1: { part: led, colour: red }`,
        nets: "PS2.plus LED1.cathode\n LED1.anode PS2.minus board.GND",
      }),
    },
  ),
  // As printed on it.
  ...sheet(
    "part-overvoltage",
    "an electrolytic for 6.3 V",
    { unsafe: 6.3 },
    {
      part: "C1",
      unit: "V",
      at: (x) => second(x, "C1.plus\n C1.minus board.GND", "C1: { part: electrolytic, farads: 1u, volts: 6.3 }"),
    },
  ),
  // From memory: parts for 3.3 V bear 3.6 V. The outlet gives and cannot take, so 5 V behind a divider raise it.
  ...sheet(
    "over-3.3-volts",
    "5 V joined to the 3.3 V net",
    { unsafe: 3.6 },
    {
      part: "3V3",
      unit: "V",
      at: (x) => ({
        parts: `${big("R1", 1000 * (5 / x - 1))}\n ${big("R2", 1000)}`,
        nets: "board.5V R1.1\n R1.2 R2.1 board.3V3\n R2.2 board.GND",
      }),
    },
  ),
  // Data sheets of push buttons: 24 V.
  ...sheet("coil-without-diode", "a bare coil behind a key", { unsafe: 24 }, { part: "L1", unit: "V", at: coilAt }),
];

/** Nets that share a leg are one: a lesson names each leg once. */
function joined(nets: string): string {
  const groups: Set<string>[] = [];
  for (const line of nets.split("\n")) {
    const legs = line
      .trim()
      .split(/\s+/)
      .filter((leg) => leg !== "");
    const same = groups.filter((g) => legs.some((leg) => g.has(leg)));
    for (const g of same) groups.splice(groups.indexOf(g), 1);
    if (legs.length > 0) groups.push(new Set([...same.flatMap((g) => [...g]), ...legs]));
  }
  return groups.map((g) => [...g].join(" ")).join("\n");
}

function found(circuit: Circuit, code: HazardCode, part: string): Hazard | undefined {
  const own = circuit.supply === "own";
  const hold = circuit.supply === undefined;
  const lesson = smallLesson(
    hold ? `PS1: { part: adapter, volts: 5, milliamps: 20000, ohms: 1m }\n ${circuit.parts}` : circuit.parts,
    joined(hold ? `PS1.plus board.5V\n PS1.minus board.GND\n ${circuit.nets}` : circuit.nets),
    `${circuit.steps ?? ""}\n { at: 3s, expect: { board: running } }`,
    `void setup() { ${circuit.setup ?? ""} } void loop() { delay(10); }`,
  );
  const once = rehearseOnce(lesson, own || hold ? {} : { supply: circuit.supply as string });
  expect(once.problems).toEqual([]);
  return once.hazards.find((h) => h.code === code && h.part === part);
}

describe("just inside and just outside", () => {
  for (const { code, name, severity, part, limit, unit, at } of cases)
    test(`${code} ${severity}: ${name}, ${limit} ${unit}`, () => {
      const inside = found(at(limit * 0.98), code, part);
      // Inside the absolute maximum a caution may still be there.
      expect(inside?.severity === severity).toBe(false);
      const outside = found(at(limit * 1.02), code, part);
      expect(outside).toMatchObject({ code, severity, part, unit });
      expect(outside?.limit).toBeCloseTo(limit, 3);
      expect(Math.abs((outside?.value ?? 0) / (limit * 1.02) - 1)).toBeLessThan(0.005);
      expect(outside?.source).not.toBe("");
    });
  test("short: less than 1 Ω between 5 V and GND", () => {
    expect(found(across(1.02), "short", "board.5V")).toBeUndefined();
    // 5 V / 0.98 Ω and the board's own 45 mA.
    expect(found(across(0.98), "short", "board.5V")?.value).toBeCloseTo(5 / 0.98 + ownAmps, 1);
  });
  for (const [battery, volts, inner] of [
    ["battery-9v", 9, 1.7],
    ["battery-4aa, type: nimh", 5, 0.2],
  ] as const)
    test(`battery-short: less than 1 Ω across ${battery}`, () => {
      const at = (ohms: number): Circuit => ({
        parts: `BAT1: { part: ${battery} }\n ${big("R1", ohms)}`,
        nets: "BAT1.plus R1.1\n BAT1.minus R1.2 board.GND",
      });
      expect(found(at(1.02), "battery-short", "BAT1")).toBeUndefined();
      expect(found(at(0.98), "battery-short", "BAT1")?.value).toBeCloseTo(volts / (0.98 + inner), 3);
      expect(found(at(0.98), "short", "BAT1")).toBeUndefined();
    });
  test("battery-short: cells that feed the board", () => {
    const at = (ohms: number): Circuit => ({
      parts: `BAT1: { part: battery-4aa, type: nimh }\n ${big("R1", ohms)}`,
      nets: "BAT1.plus R1.1 board.5V\n BAT1.minus R1.2 board.GND",
      supply: "own",
    });
    expect(found(at(1.02), "battery-short", "board.5V")).toBeUndefined();
    expect(found(at(0.98), "battery-short", "board.5V")?.severity).toBe("unsafe");
  });
  test("pins-fight: two outputs on one net that disagree, not two that agree", () => {
    const at = (level: string): Circuit => ({
      parts: big("R1", 10_000),
      nets: "board.D4 board.D5 R1.1\n R1.2 board.GND",
      setup: `${out(["D5"], "HIGH")} digitalWrite(4, ${level}); pinMode(4, OUTPUT);`,
    });
    expect(found(at("HIGH"), "pins-fight", "D4")).toBeUndefined();
    // 5 V through twice 25 Ω.
    expect(found(at("LOW"), "pins-fight", "D4")?.value).toBeCloseTo(0.1, 3);
  });
  test("a coil with a diode across it is caught", () => {
    const bare = coilAt(100);
    const caught = {
      ...bare,
      parts: `${bare.parts}\n D1: { part: 1N4007 }`,
      nets: bare.nets.replace("L1.1", "L1.1 D1.cathode").replace("L1.2", "L1.2 D1.anode"),
    };
    expect(found(bare, "coil-without-diode", "L1")?.severity).toBe("unsafe");
    expect(found(caught, "coil-without-diode", "L1")).toBeUndefined();
  });
  test("every code has its row", () => {
    const rows = new Set<string>([...cases.map((c) => c.code), "short", "battery-short", "pins-fight"]);
    expect(hazardCodes.filter((code) => !rows.has(code))).toEqual([]);
  });
});
