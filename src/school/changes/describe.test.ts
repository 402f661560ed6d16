// What an act is called: data with names, and a sentence of at most twelve words for every kind.
//
// Sentences are judged in English, as a teacher reads them; the data are looked at beside the demo class.
import { readFileSync } from "node:fs";
import { expect, describe as group, test } from "vitest";
import en from "../../../locales/en.json" with { type: "json" };
import { type Day, seededRandom } from "../../base/index.ts";
import { languageFor, sayUnchecked } from "../../language/index.ts";
import { readClassFile } from "../file/index.ts";
import { applyChange } from "./applyChange.ts";
import type { Change } from "./change.ts";
import { changeKinds } from "./changeShape.ts";
import { describe } from "./describe.ts";
import { randomChange } from "./randomChange.fixture.ts";

const demo = readClassFile("harbour.json", readFileSync(new URL("../../../demo/harbour.json", import.meta.url), "utf8")).value!;
const english = languageFor("en");
const sentence = (change: Change, titleOf?: (lesson: string) => string) => {
  const { code, data } = describe(change, demo, titleOf);
  return sayUnchecked(english, code, data);
};
const lighthouse = { class: "7b", lesson: "lighthouse", date: "2027-01-12" as Day };
const movement = { date: "2027-01-12" as Day, item: "led red", change: -3, why: "lost", note: "" } as const;

const sentences: [change: Change, says: string][] = [
  [{ kind: "mark-absent", sitting: lighthouse, pupils: ["p01"] }, "Amara Okonjo is away on 12 January 2027."],
  [
    { kind: "mark-absent", sitting: lighthouse, pupils: ["p01", "p02"] },
    "Amara Okonjo and Bilal Haddad are away on 12 January 2027.",
  ],
  [{ kind: "mark-present", sitting: lighthouse, pupils: ["p01"] }, "Amara Okonjo is there on 12 January 2027."],
  [{ kind: "remove-pupil", class: "7b", pupil: "p30" }, "Đorđe Petrović left Class 7b."],
  [{ kind: "rename-pupil", class: "7b", pupil: "p30", name: "Đorđe P" }, "Đorđe Petrović is now called Đorđe P."],
  [
    { kind: "move-lesson", sitting: lighthouse, date: "2027-01-13" as Day, start: 600 },
    "The lighthouse was moved to 13 January 2027, 10:00.",
  ],
  [{ kind: "set-budget", budget: 9950 }, "An order may cost 99.50 EUR."],
  [{ kind: "set-budget", budget: null }, "An order may cost any sum."],
  [{ kind: "set-kit", kit: "harbour-basic", count: 7 }, "The count of the kit harbour-basic is now 7."],
  [{ kind: "move-stock", movement }, "Lost: LED, red, 3."],
  [{ kind: "count-devices", what: "cables", count: 1 }, "One cable is in the list now."],
  [{ kind: "keep-apart", class: "7b", pupils: ["p01", "p03"] }, "Amara Okonjo and Chiara Venturi were put in different teams."],
  [
    { kind: "decide", decision: { kind: "supply", lesson: "barrier", item: "battery-9v", date: "2027-01-12" as Day } },
    "The supply of The barrier is now battery, 9 V block.",
  ],
  [{ kind: "remove-class", class: "nobody" }, "nobody was taken out of the file."],
];
group("sentences", () => {
  for (const [change, says] of sentences)
    test(says, () => {
      const titles = new Map([
        ["lighthouse", "The lighthouse"],
        ["barrier", "The barrier"],
      ]);
      expect(sentence(change, (id) => titles.get(id) ?? id)).toBe(says);
    });
});

test("every kind has its sentence, and every sentence its kind", () => {
  expect(Object.keys(en.app.change).sort()).toEqual([...changeKinds].sort());
});

/** The demo after a while: with ticks, decisions and wishes. */
const lived = (() => {
  const random = seededRandom(2, "lived");
  let file = demo;
  for (const kind of ["decide", "tick", "keep-apart", "mark-absent", "set-kit", "set-supply"] as const)
    for (let n = 0; n < 8; n += 1) {
      const outcome = applyChange(file, randomChange(file, random, kind));
      if ("value" in outcome) file = outcome.value;
    }
  return file;
})();

group("every kind is said with its data, in twelve words", () => {
  for (const kind of changeKinds)
    test(kind, () => {
      const random = seededRandom(5, kind);
      const text = (en.app.change as Record<string, string>)[kind]!;
      let said = 0;
      for (let n = 0; n < 60; n += 1) {
        const change = randomChange(lived, random, kind);
        const outcome = applyChange(lived, change);
        if ("problem" in outcome || outcome.value === lived) continue;
        const { code, data } = describe(change, lived);
        expect(code).toBe(`change.${kind}`);
        const says = sayUnchecked(english, code, data);
        expect(says).toMatch(/\.$/);
        expect(says).not.toMatch(/[{}]|—|undefined|NaN|\[object/);
        said += 1;
      }
      expect(said).toBeGreaterThan(0);
      // Names and values count as one word each.
      expect(longest(text)).toBeLessThanOrEqual(12);
    });
});

/** Words of the longest sentence that a text can make; a value counts as one. */
function longest(text: string): number {
  let rest = text;
  for (;;) {
    // An innermost choice gives way to its longest branch.
    const choice = /\{\w+, (?:plural|select),((?:\s*=?\w+ \{(?:[^{}]|\{\w+\})*\})+)\s*\}/.exec(rest);
    if (!choice) break;
    const branches = [...(choice[1] as string).matchAll(/=?\w+ \{((?:[^{}]|\{\w+\})*)\}/g)].map((m) => m[1] as string);
    const words = (branch: string) => branch.split(/\s+/).filter((word) => word !== "").length;
    const most = branches.reduce((a, b) => (words(b) > words(a) ? b : a), "");
    rest = rest.replace(choice[0], most);
  }
  return rest.split(/\s+/).filter((word) => /[\p{L}\p{N}#]/u.test(word)).length;
}
