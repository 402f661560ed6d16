// What is tried in place of a part: what its author allows, what the catalogue says may stand in, what the class has; never what
// cannot be put in its place.
import { expect, test } from "vitest";
import { itemKey, parseItemKey } from "../parts/index.ts";
import { ourLesson, smallLesson } from "./lesson.fixture.ts";
import { listVariants } from "./listVariants.ts";

const lesson = smallLesson(
  `R1: { part: resistor, ohms: 220, may-be: [270, 330] }
   LED1: { part: led, colour: red }
   Q1: { part: BC547 }
   BZ1: { part: piezo }
   SP1: { part: speaker }`,
  `board.D9 R1.1
   R1.2 LED1.anode
   board.D8 BZ1.1
   board.D6 SP1.1
   board.D7 Q1.base
   board.5V Q1.collector
   LED1.cathode BZ1.2 SP1.2 Q1.emitter board.GND`,
  "{ at: 500ms, expect: { LED1: dark } }",
  "void setup() {} void loop() { delay(10); }",
);
const triedFor = (part: string, items: readonly string[] = []) =>
  listVariants(lesson, items).flatMap((v) => (v.part === part ? [v.item] : []));

const cases: [what: string, part: string, items: string[], expected: string[]][] = [
  ["the values that the author allows", "R1", [], ["resistor 270", "resistor 330"]],
  [
    "and what the class has, each once",
    "R1",
    ["resistor 330", "resistor 1k", "led blue"],
    ["resistor 270", "resistor 330", "resistor 1k"],
  ],
  ["colours that may stand in", "LED1", [], ["led yellow", "led green", "led blue", "led white"]],
  ["another transistor; a MOSFET's legs have other names", "Q1", ["nmos 2N7000"], ["npn PN2222A"]],
  ["a part of another kind with the same legs", "SP1", ["resistor 220"], ["piezo"]],
  ["none whose legs have other names", "BZ1", ["magnetic-buzzer"], []],
];
for (const [what, part, items, expected] of cases) test(what, () => expect(triedFor(part, items)).toEqual(expected));

test("no item is tried twice for one part, however it is written", () => {
  for (const id of ["ferry-fan", "lighthouse", "barrier"]) {
    const keys = listVariants(ourLesson(id), ["npn BC547", "BC547", "diode 1N4148"]).map((v) => {
      const { kind, values } = parseItemKey(v.item)!;
      return `${v.part} ${itemKey(kind, values)}`;
    });
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
  }
});
