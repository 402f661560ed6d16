// The potentiometer: two resistors whose sum stays the same. Turned to 100 % the wiper is at leg 1.
// Does not know: logarithmic tracks.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";

const figures = {
  endOhms: { value: 2, source: "data sheet FTB10: at most 10 Ω is left at each end; 2 Ω from memory" },
};

export const potentiometer = definePart({
  id: "potentiometer",
  legs: ["1", "wiper", "2"],
  alsoCalled: { "3": "2" },
  markedLeg: "wiper",
  parameters: {
    ohms: {
      unit: "Ω",
      usual: { value: 10_000, source: "common practice, no source: the value in beginners' sets" },
      least: 10,
      most: 10e6,
      tellsApart: true,
      tolerance: { value: 0.2, source: "data sheets of 16 mm potentiometers T-16 and FTB10: ±20 %" },
    },
    watts: { unit: "W", usual: { value: 0.15, source: "data sheet FTB10: 0.15 W at 50 °C" }, least: 0.01, most: 5 },
  },
  states: { turn: { unit: "%", atFirst: 0.5, least: 0, most: 1 } },
  footprint: inLine(["1", "wiper", "2"], 2, "16 mm type, tags 5 mm apart; flat tags do not grip: from memory"),
  figures,
  model: (name, node, values, state) => {
    const end = figures.endOhms.value;
    const ohms = Number(values.ohms);
    const turn = Number(state.turn);
    return [
      { kind: "resistor", id: `${name}.1`, a: node("1"), b: node("wiper"), ohms: (1 - turn) * ohms + end },
      { kind: "resistor", id: `${name}.2`, a: node("wiper"), b: node("2"), ohms: turn * ohms + end },
    ];
  },
  limits: (values) => {
    // A track carries its full power only over its whole length: what counts is the current, √(P/R), 3.9 mA for 10 kΩ.
    const most = { value: Math.sqrt(Number(values.watts) / Number(values.ohms)), source: "√(P/R) with the data sheet's power" };
    return [
      { what: "amps", unsafe: most, element: "1" },
      { what: "amps", unsafe: most, element: "2" },
    ];
  },
  standIns: [{ part: "resistor", when: "two of them as a fixed setting", source: practice }],
  warming: (values) => ({
    kelvinPerWatt: {
      value: (100 - 50) / Number(values.watts),
      source: "data sheet FTB10: full power at 50 °C; none at 100 °C, from memory",
    },
    surface: "plastic",
  }),
  price: "c",
  loss: "L1",
  cautions: ["small-parts"],
  meterTest: "wiper-moves",
  source: "data sheets T-16, FTB10",
});
