// Which word was meant. Distances were counted by hand: one slip for every three letters is allowed.
import { expect, test } from "vitest";
import { near } from "./near.ts";

const legs = ["anode", "cathode", "common", "1", "2", "1b", "2b"];
const cases: [word: string, words: readonly string[], meant: string | null, why: string][] = [
  ["anod", legs, "anode", "one letter left out"],
  ["anoed", legs, "anode", "two letters swapped"],
  ["Cathode", legs, "cathode", "case does not count"],
  ["kathode", legs, "cathode", "one letter changed"],
  ["comon", legs, "common", "one of two equal letters left out"],
  ["wiper", legs, null, "nothing alike"],
  ["3", legs, null, "a single letter that differs is another word"],
  ["1a", legs, "1", "one letter too many"],
  ["resistr", ["resistor", "transistor"], "resistor", "the nearer of two"],
  ["resister", ["transistor", "resistor"], "resistor", "the order does not decide between unequal"],
  ["lef", ["led", "leg"], "led", "the first of two equally near"],
  ["B2", ["R2", "R1", "B1"], "B1", "of two equally near the one that begins alike"],
  ["", legs, null, "nothing written"],
  ["anode", [], null, "nothing to choose from"],
  ["colour", ["color"], "color", "two spellings"],
  ["x".repeat(100), legs, null, "too long to be a slip"],
];
for (const [word, words, meant, why] of cases) test(`"${word}": ${why}`, () => expect(near(word, words)).toBe(meant));
test("a word that is there is found itself", () => {
  for (const leg of legs) expect(near(leg, legs)).toBe(leg);
});
