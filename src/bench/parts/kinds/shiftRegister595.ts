// The shift register 74HC595: eight outputs from three wires. All together may carry 70 mA, so eight lamps get 8 mA each.
// Does not know: how long its edges take; a program is slower by far.
import type { Element } from "../../circuit/index.ts";
import { definePart } from "../definePart.ts";
import { overDitch } from "../footprints.ts";
import { logicLevel } from "../logicLevel.ts";
import type { PartLogic } from "../partKind.ts";

const left = ["Q1", "Q2", "Q3", "Q4", "Q5", "Q6", "Q7", "GND"];
const right = ["VCC", "Q0", "DS", "OE", "STCP", "SHCP", "MR", "Q7S"];

const inputs = ["DS", "SHCP", "STCP", "MR", "OE"];
const outputs = [0, 1, 2, 3, 4, 5, 6, 7];

/** Function table of the data sheet: bits go in at each rise of SHCP, the first one ends up at Q7; STCP's rise shows them. */
function logic(): PartLogic {
  let [shifted, stored] = [0, 0];
  const levels = new Map<string, boolean>();
  return {
    look({ volts }) {
      const supply = volts("VCC");
      const before = new Map(levels);
      for (const leg of inputs) levels.set(leg, logicLevel(volts(leg), supply, before.get(leg) ?? false));
      const isHigh = (leg: string) => levels.get(leg) === true;
      const rose = (leg: string) => isHigh(leg) && before.get(leg) === false;
      if (supply < figures.leastVolts.value) [shifted, stored] = [0, 0];
      else {
        if (rose("STCP")) stored = shifted;
        if (!isHigh("MR")) shifted = 0;
        else if (rose("SHCP")) shifted = ((shifted << 1) | (isHigh("DS") ? 1 : 0)) & 0xff;
      }
      return { state: { stored, shown: !isHigh("OE") } };
    },
  };
}

const figures = {
  outputUnsafeAmps: { value: 0.035, source: "data sheet CD74HC595: ±35 mA an output" },
  sumUnsafeAmps: { value: 0.07, source: "data sheet CD74HC595: ±70 mA through VCC or GND" },
  outputOhms: { value: 40, source: "data sheet 74HC595 (2003): 0.16 V typical, 0.33 V at most at 6 mA: 27 to 55 Ω" },
  inputOhms: {
    value: 1e8,
    source: "data sheet 74HC595: input current at most 1 µA; a tenth of a millionth of a volt's worth, from memory",
  },
  leastVolts: { value: 2, source: "data sheet 74HC595: 2 to 6 V" },
};

export const shiftRegister595 = definePart({
  id: "74HC595",
  legs: [...left, ...right],
  alsoCalled: {
    SER: "DS",
    RCLK: "STCP",
    SRCLK: "SHCP",
    SRCLR: "MR",
    QA: "Q0",
    QB: "Q1",
    QC: "Q2",
    QD: "Q3",
    QE: "Q4",
    QF: "Q5",
    QG: "Q6",
    QH: "Q7",
    "QH'": "Q7S",
  },
  markedLeg: "Q1",
  footprint: overDitch(left, right, 1, "DIP-16, notch at leg 1 (data sheet CD74HC595)"),
  figures,
  states: {
    stored: { unit: "1", atFirst: 0, least: 0, most: 255, inner: true },
    shown: { unit: "yes-no", atFirst: false, inner: true },
  },
  logic,
  model: (name, node, _, state) => {
    const [plus, minus] = [`${name}.plus`, `${name}.minus`];
    const lead = (id: string, a: string, b: string): Element => ({ kind: "resistor", id, a, b, ohms: 0.01 });
    const ends = outputs.flatMap((n): Element[] => {
      if (!state.shown) return [];
      const isHigh = ((Number(state.stored) >> n) & 1) === 1;
      return [
        { kind: "resistor", id: `${name}.Q${n}`, a: isHigh ? plus : minus, b: node(`Q${n}`), ohms: figures.outputOhms.value },
      ];
    });
    return [
      lead(`${name}.supply`, node("VCC"), plus),
      lead(`${name}.ground`, minus, node("GND")),
      ...inputs.map(
        (leg): Element => ({ kind: "resistor", id: `${name}.${leg}`, a: node(leg), b: minus, ohms: figures.inputOhms.value }),
      ),
      ...ends,
    ];
  },
  limits: () => [
    ...outputs.map((n) => ({ what: "amps", element: `Q${n}`, unsafe: figures.outputUnsafeAmps }) as const),
    ...["supply", "ground"].map((element) => ({ what: "amps", element, unsafe: figures.sumUnsafeAmps }) as const),
  ],
  price: "b",
  loss: "L1",
  cautions: ["hot-when-reversed", "small-parts"],
  meterTest: "output-voltage",
  source: "data sheets CD74HC595, MC74HC595A, 74HC595 (2003)",
});
