// What is written reads the same, and is written the same again: the demo, every class file that chance can make, and the demo
// after a thousand small accidents.
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { afterAccident } from "../../../test/files/accidents.ts";
import { anyClassFile } from "../../../test/files/generatedClassFile.ts";
import { patience } from "../../../test/files/patience.ts";
import { sample } from "../../../test/sample.ts";
import { parseMoney, parseQuantity, plainText, seededRandom } from "../../base/index.ts";
import { readItem } from "./itemText.ts";
import { readClassFile } from "./readClassFile.ts";
import { writeClassFile } from "./writeClassFile.ts";

const demo = readFileSync(new URL("../../../demo/harbour.json", import.meta.url), "utf8");

test("the demo is written as it stands", () => {
  const { value } = readClassFile("harbour.json", demo);
  expect(writeClassFile(value!)).toBe(demo);
});

test("the first lines say what the file is, and every entry has its line", () => {
  const lines = demo.split("\n");
  expect(lines[1]).toBe('  "format": "benchday-class/1",');
  expect(lines[2]).toMatch(/^ {2}"about": /);
  const pupils = lines.filter((line) => line.includes('"marks"'));
  expect(pupils.length).toBe(54);
});

test("what says nothing is left out of an entry, and every list is there", () => {
  const text =
    '{"format":"benchday-class/1","currency":"KES","classes":[{"id":"5a","pupils":[{"id":"1","name":"Ana"}]}],"stock":[{"item":"led","count":2}]}';
  expect(writeClassFile(readClassFile("class.json", text).value!)).toBe(`{
  "format": "benchday-class/1",
  "about": "",
  "language": "en",
  "currency": "KES",
  "chance": "95 %",
  "budget": null,
  "lessonFolder": null,
  "kitFolder": null,
  "room": { "name": "", "sockets": 0, "lux": null },
  "classes": [
    {
      "id": "5a",
      "name": "5a",
      "teamSize": 3,
      "balance": null,
      "pupils": [
        { "id": "1", "name": "Ana" }
      ],
      "apart": [],
      "together": [],
      "lessons": []
    }
  ],
  "kits": [],
  "stock": [
    { "item": "led red", "count": 2 }
  ],
  "movements": [],
  "suppliers": [],
  "computers": [],
  "boards": [],
  "cables": [],
  "supplies": [],
  "powerCuts": [],
  "decisions": [],
  "counts": [],
  "log": []
}
`);
});

test("every class file reads as it was written, and is written the same again", () => {
  fc.assert(
    fc.property(anyClassFile, (classFile) => {
      const text = writeClassFile(classFile);
      const { value, problems } = readClassFile("class.json", text);
      expect(problems.filter((p) => p.severity !== "warning")).toEqual([]);
      expect(value).toEqual(classFile);
      expect(writeClassFile(value!)).toBe(text);
    }),
    { seed: 20_261_125, numRuns: sample(300, 10_000) },
  );
});

/** What one field says, whatever the spelling: for comparing a text with what was written from it. */
function meaning(field: string, said: unknown): unknown {
  if (typeof said === "number") return said + 0;
  if (typeof said !== "string") return said;
  const text = plainText(said);
  if (field === "item") return readItem(text);
  if (["price", "shipping", "freeFrom", "budget"].includes(field)) return parseMoney(text, 2);
  return text;
}

/** Nothing that the old text says may be missing from the new one, or be other there. */
function expectSaid(before: unknown, after: unknown, field: string): void {
  if (field === "chance") {
    const share = (x: unknown) => parseQuantity(x as string | number, "%");
    expect(share(after)).toEqual(share(before));
  } else if (Array.isArray(before)) {
    expect((after as unknown[] | undefined)?.length ?? 0).toBe(before.length);
    for (const [i, entry] of before.entries()) expectSaid(entry, (after as unknown[])[i], field);
  } else if (typeof before === "object" && before !== null) {
    for (const [name, inside] of Object.entries(before)) {
      const said = (after as Record<string, unknown>)[name];
      const isNothing = inside === null || inside === "" || (typeof inside === "object" && Object.keys(inside).length === 0);
      if (said === undefined && isNothing) continue;
      expectSaid(inside, said, name);
    }
  } else expect(meaning(field, after)).toEqual(meaning(field, before));
}

test("an accident is refused at a place, or what is left is kept whole: nothing changes unseen", () => {
  let refused = 0;
  let kept = 0;
  for (let seed = 1; seed <= sample(500, 10_000); seed += 1) {
    const random = seededRandom(seed, "accident");
    const text = afterAccident(demo, random);
    const { value: classFile, problems } = readClassFile("harbour.json", text);
    if (classFile === null) {
      refused += 1;
      const error = problems.find((p) => p.severity !== "warning");
      expect(error?.place?.line, `seed ${seed}`).toBeGreaterThan(0);
      expect(error?.place?.column, `seed ${seed}`).toBeGreaterThan(0);
      expect(error?.place?.line, `seed ${seed}`).toBeLessThanOrEqual(text.split("\n").length);
      continue;
    }
    kept += 1;
    const written = writeClassFile(classFile);
    expect(readClassFile("harbour.json", written).value, `seed ${seed}`).toEqual(classFile);
    expectSaid(JSON.parse(text), JSON.parse(written), "");
  }
  // Both ends of the law are tried.
  expect(Math.min(refused, kept)).toBeGreaterThan(50);
});

test("a prototype's name is refused wherever it stands, and changes nothing", () => {
  const openings = [...demo.matchAll(/\{/g)];
  for (const { index } of openings.filter((_, i) => i % 7 === 0))
    for (const name of ["__proto__", "constructor", "prototype"]) {
      const text = `${demo.slice(0, index + 1)}"${name}": {"polluted": 1}, ${demo.slice(index + 1)}`;
      const { value: classFile, problems } = readClassFile("harbour.json", text);
      expect(classFile).toBe(null);
      expect(problems).toMatchObject([{ code: "document.badName", found: name }]);
    }
  expect(({} as Record<string, unknown>).polluted).toBe(undefined);
});

/** A class file whose parts are as large as they may be, and wrong. */
const people = Array.from({ length: 2000 }, (_, i) => `{"id":"pupil-${i}","name":"Pupil number ${i}"}`).join(",");
const strangers = JSON.stringify(Array.from({ length: 2000 }, (_, i) => `pupil_${i}`));
const sameDay = Array.from(
  { length: 2000 },
  (_, i) => `{"lesson":"lesson-${i}","date":"2027-01-12","start":"09:00","absent":${i < 20 ? strangers : "[]"}}`,
).join(",");
const crowd = `{"format":"benchday-class/1","currency":"EUR","classes":[{"id":"7b","pupils":[${people}],"lessons":[${sameDay}]}]}`;
const teapots = Array.from({ length: 50_000 }, (_, i) => `{"item":"teapot ${i}","count":1}`).join(",");
const kitchen = `{"format":"benchday-class/1","currency":"EUR","classes":[],"stock":[${teapots}]}`;

for (const [name, text, code] of [
  ["two thousand pupils, as many lessons at once and strangers in each", crowd, "file.unknownPupil"],
  ["fifty thousand teapots", kitchen, "file.unknownItem"],
] as const)
  test(`${name} are refused`, { timeout: patience }, () => {
    const { problems } = readClassFile("class.json", text);
    expect(problems.some((p) => p.code === code)).toBe(true);
    expect(problems.filter((p) => p.severity !== "warning").length).toBeLessThanOrEqual(100);
  });

const large: [name: string, text: string, code: string][] = [
  ["ten thousand lists deep", "[".repeat(10_000), "document.tooDeep"],
  ["one line of ten million letters", `{"about": "${"a".repeat(10_000_000)}"}`, "document.tooLarge"],
  ["two million numbers", `[${"1,".repeat(2_000_000)}1]`, "document.tooMany"],
];
for (const [name, text, code] of large)
  test(`${name} is refused`, { timeout: patience }, () =>
    expect(readClassFile("class.json", text).problems).toMatchObject([{ code }]),
  );
