// What is known of the board: an ATmega328P at 5 V and 16 MHz with a USB chip, a regulator and a fuse. A class may override it.
//
// The rehearsal builds the board's side of the circuit from these, because what a pin is depends on the running program.
// Does not know: programs, circuits.
import type { Sourced } from "./partKind.ts";

const sheet = "ATmega328P data sheet";

/** The legs of the board as lessons write them. */
export const boardLegs: readonly string[] = [
  ...Array.from({ length: 14 }, (_, i) => `D${i}`),
  ...Array.from({ length: 6 }, (_, i) => `A${i}`),
  "5V",
  "3V3",
  "VIN",
  "GND",
  "AREF",
  "RESET",
  "USB",
];

/** Pins whose currents the data sheet adds up. */
export interface PortGroup {
  readonly pins: readonly string[];
  readonly amps: number;
}

const ports = {
  a0to5: ["A0", "A1", "A2", "A3", "A4", "A5"],
  d0to4: ["D0", "D1", "D2", "D3", "D4"],
  d5to7: ["D5", "D6", "D7"],
  d8to13: ["D8", "D9", "D10", "D11", "D12", "D13"],
};

const of = (value: number, source: string): Sourced<number> => ({ value, source });

export const boardFacts = {
  /** V and Hz that the board runs at. */
  supplyVolts: of(5, "the board: 5 V, 16 MHz"),
  clockHertz: of(16e6, "the board: 5 V, 16 MHz"),

  pin: {
    /** Ω between the supply rail and a pin that drives. The guaranteed 4.2 V at 20 mA allows 40 Ω. */
    outputOhms: of(
      25,
      `${sheet}, typical curves of pin driver strength at 5 V, from memory; guaranteed: 4.2 V at 20 mA (table 29-1)`,
    ),
    worstOutputOhms: of(40, `${sheet}, table 29-1: V_OH at least 4.2 V at 20 mA and 5 V`),
    pullUpOhms: of(35_000, "middle of 20–50 kΩ"),
    leastPullUpOhms: of(20_000, `${sheet}, table 29-1: 20–50 kΩ`),
    mostPullUpOhms: of(50_000, `${sheet}, table 29-1: 20–50 kΩ`),
    leakageAmps: of(1e-6, `${sheet}, table 29-1: at most 1 µA each way`),
    /** A that the tables test with; more is a caution. */
    cautionAmps: of(0.02, `${sheet}, table 29-1: tested with 20 mA`),
    /** A at which the chip may be damaged. */
    unsafeAmps: of(0.04, `${sheet}, section 29.1: absolute maximum 40.0 mA for each pin`),
    /** Shares of the supply: below the first a pin reads low, above the second high, in between nobody knows. */
    lowShare: of(0.3, `${sheet}, table 29-1: V_IL at most 0.3 V_CC`),
    highShare: of(0.6, `${sheet}, table 29-1: V_IH at least 0.6 V_CC`),
    /** V beyond the rails that a pin bears. */
    beyondRailVolts: of(0.5, `${sheet}, section 29.1: −0.5 V to V_CC + 0.5 V`),
  },

  /** Sums of current that the data sheet limits, when the pins give it (source) and when they take it (sink). */
  portGroups: {
    source: [
      { pins: [...ports.a0to5, ...ports.d0to4], amps: 0.15 },
      { pins: [...ports.d8to13, ...ports.d5to7], amps: 0.15 },
    ],
    sink: [
      { pins: ports.a0to5, amps: 0.1 },
      { pins: [...ports.d8to13, ...ports.d5to7], amps: 0.1 },
      { pins: ports.d0to4, amps: 0.1 },
    ],
    from: `${sheet}, table 29-1, notes 3 and 4`,
  } as {
    readonly source: readonly PortGroup[];
    readonly sink: readonly PortGroup[];
    readonly from: string;
  },

  chip: {
    unsafeAmps: of(0.2, `${sheet}, section 29.1: 200.0 mA through V_CC or GND`),
    mostVolts: of(5.5, `${sheet}: works from 1.8 V to 5.5 V`),
    unsafeVolts: of(6, `${sheet}, section 29.1: at most 6.0 V`),
    /** V from which on 16 MHz is allowed: on the line from 10 MHz at 2.7 V to 20 MHz at 4.5 V. */
    leastVoltsForClock: of(3.78, `${sheet}, section 29.3: safe operating area, 2.7 V + 6/10 · 1.8 V`),
    /** V below which the board resets. Between this and `leastVoltsForClock` nobody knows what it does. */
    brownOutVolts: of(2.7, "set on most boards, from memory"),
    brownOutHysteresisVolts: of(0.05, `${sheet}, brown-out detection: 50 mV, from memory`),
    /** s from reset to the first line of setup(), with the boot loader's wait. */
    startSeconds: of(1.5, "boot loader waits 0.5–2 s when a computer opens the port, from memory"),
  },

  adc: {
    steps: of(1024, `${sheet}: 10 bits, code = V · 1024 / V_ref`),
    inputOhmsMost: of(10_000, `${sheet}, analog input circuitry: optimised for sources up to about 10 kΩ`),
    /** What the converter charges while it looks: F through Ω for s. */
    sampleFarads: of(14e-12, `${sheet}, analog input circuitry: 14 pF`),
    sampleOhmsMost: of(100_000, `${sheet}, analog input circuitry: 1–100 kΩ`),
    sampleSeconds: of(1.5 / 125e3, `${sheet}: sampled 1.5 turns after the start, 125 kHz from 16 MHz / 128`),
    errorSteps: of(2, `${sheet}: ±2 steps absolute accuracy`),
    internalReferenceVolts: of(1.1, `${sheet}: 1.0–1.2 V`),
  },

  pwm: {
    hertz: of(16e6 / (64 * 510), `${sheet}: phase-correct, f / (64 · 510)`),
    /** On D5 and D6. */
    fastHertz: of(16e6 / (64 * 256), `${sheet}: fast, f / (64 · 256)`),
    pins: ["D3", "D5", "D6", "D9", "D10", "D11"] as readonly string[],
  },

  /** A that the board draws by itself: chip, USB chip and lamps. */
  ownAmps: of(0.045, "40–50 mA, from memory"),
  /** The lamp on D13 and its resistor. */
  lampOhms: of(1000, "from memory: LED with 1 kΩ, on newer boards behind a buffer"),
  lampPin: "D13",
  /** D0 and D1 go to the USB chip through these. */
  serialOhms: of(1000, "from memory"),

  fuse: {
    holdAmps: of(0.5, "data sheets 1812L050 and 1206L050: hold 0.50 A at 20 °C"),
    tripAmps: of(1.0, "data sheets 1812L050 and 1206L050: trip 1.00 A at 20 °C"),
    sheetAmps: of(8, "data sheet 1206L050: trips in at most 0.1 s at 8 A"),
    sheetSeconds: of(0.1, "data sheet 1206L050: trips in at most 0.1 s at 8 A"),
    leastOhms: of(0.15, "data sheet MF-MSMF050: 0.15–1.00 Ω"),
    ohms: of(0.4, "geometric middle of 0.15–1.00 Ω (data sheet MF-MSMF050)"),
    mostOhms: of(1.0, "data sheet MF-MSMF050: 0.15–1.00 Ω after a trip"),
  },

  /** From VIN: a diode, then a 1117-class regulator in SOT-223 without heat sink. */
  regulator: {
    volts: of(5, "data sheet NCP1117"),
    dropoutVolts: of(1.2, "data sheet NCP1117: at most 1.2 V at 800 mA"),
    diodeVolts: of(0.7, "from memory: 0.5–0.7 V"),
    limitAmps: of(1.0, "data sheet NCP1117: current limit at least 1.0 A"),
    quiescentAmps: of(0.006, "data sheet NCP1117: 6 mA typical, from memory"),
    kelvinPerWatt: of(160, "data sheet NCP1117, SOT-223 on least copper, from memory"),
    /** From the junction to the part of its case that a finger reaches. */
    caseKelvinPerWatt: of(15, "data sheet NCP1117, SOT-223: junction to tab, from memory"),
    mostCelsius: of(125, "data sheet NCP1117: 150 °C absolute, 125 °C to work with"),
    mostVolts: of(20, "data sheet NCP1117: at most 20 V"),
    leastInputVolts: of(6.9, "5 V + 1.2 V + 0.7 V"),
    recommendedMostVolts: of(12, "common practice, no source: 7–12 V at VIN"),
  },

  output3V3: {
    volts: of(3.3, "data sheet LP2985: 1–1.5 %"),
    cautionAmps: of(0.05, "from memory: older boards take it from the USB chip, 50 mA"),
    unsafeAmps: of(0.15, "data sheet LP2985: 150 mA"),
    ohms: of(0.5, "from memory"),
  },

  /** °C of the room that heat is reckoned from. */
  roomCelsius: of(25, "common practice, no source"),
} as const;
