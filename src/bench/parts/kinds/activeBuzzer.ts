// The active buzzer: sounds by itself at about 2.4 kHz when it has 5 V. It looks like the magnetic one, which does not.
// Does not know: the warble that a tone makes of it.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";

const sheet = "data sheet FMB12A12 class, 5 V twin";
const figures = {
  ohms: { value: 167, source: `${sheet}: at most 30 mA at 5 V, on average` },
  hertz: { value: 2400, source: `${sheet}: 2.4 ± 0.4 kHz` },
};

export const activeBuzzer = definePart({
  id: "active-buzzer",
  legs: ["plus", "minus"],
  alsoCalled: { "1": "plus", "2": "minus" },
  markedLeg: "plus",
  footprint: inLine(["plus", "minus"], 3, "7.6 mm apart, 6.5 mm on some: from memory"),
  figures,
  model: (name, node) => [{ kind: "resistor", id: name, a: node("plus"), b: node("minus"), ohms: figures.ohms.value }],
  limits: () => [
    { what: "volts", unsafe: { value: 7, source: `${sheet}: 4–7 V` } },
    { what: "reverseVolts", caution: { value: 1, source: "from memory: its transistor is reversed" } },
  ],
  noticed: () => [{ sense: "sound", own: true, leastVolts: 3, source: `${sheet}: 4–7 V; weaker from about 3 V, from memory` }],
  standIns: [{ part: "magnetic-buzzer", when: "with a tone of 2 kHz and 100 Ω in series", source: practice }],
  price: "b",
  loss: "L1",
  cautions: ["loud"],
  meterTest: "buzzes-on-5-volts",
  source: sheet,
});
