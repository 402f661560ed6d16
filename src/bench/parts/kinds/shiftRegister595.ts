// The shift register 74HC595: eight outputs from three wires. All together may carry 70 mA, so eight lamps get 8 mA each.
// Does not know: its logic, so that what hangs on it is not rehearsed.
import { definePart } from "../definePart.ts";
import { overDitch } from "../footprints.ts";

const left = ["Q1", "Q2", "Q3", "Q4", "Q5", "Q6", "Q7", "GND"];
const right = ["VCC", "Q0", "DS", "OE", "STCP", "SHCP", "MR", "Q7S"];

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
  figures: {
    outputUnsafeAmps: { value: 0.035, source: "data sheet CD74HC595: ±35 mA an output" },
    sumUnsafeAmps: { value: 0.07, source: "data sheet CD74HC595: ±70 mA through VCC or GND" },
    outputCautionAmps: { value: 0.006, source: "data sheet 74HC595 (2003): specified at 6 mA" },
  },
  notModelled: true,
  price: "b",
  loss: "L1",
  cautions: ["hot-when-reversed", "small-parts"],
  meterTest: "output-voltage",
  source: "data sheets CD74HC595, MC74HC595A, 74HC595 (2003)",
});
