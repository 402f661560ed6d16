// The worked examples in the READMEs of kits/ and demo/ are right: whole files are read, and pieces of the demo stand in it.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readClassFile, readKit, readKitList, readRoster } from "../../src/school/file/index.ts";

const text = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
const blocks = (path: string, kind: string) =>
  [...text(path).matchAll(new RegExp(`\`\`\`${kind}\\n([^\`]*)\`\`\``, "g"))].map((m) => m[1]!);

test("the worked kit is read, and the smallest class file uses it", () => {
  const [kitText = ""] = blocks("kits/README.md", "yaml");
  const kit = readKit("my-kit.yaml", kitText);
  expect(kit.problems).toEqual([]);
  const [classText = ""] = blocks("kits/README.md", "json");
  const known = { kits: new Map([["my-kit", kit.value!]]), lessonMinutes: new Map([["lighthouse", 80]]) };
  const { value, problems } = readClassFile("my-class.json", classText, known);
  expect(problems).toEqual([]);
  expect(value?.classes[0]?.pupils.length).toBe(3);
});

test("the two tables are read", () => {
  const [list = "", roster = ""] = blocks("kits/README.md", "csv");
  expect([...(readKitList("kit.csv", list).value ?? [])]).toEqual([
    ["led red", 5],
    ["resistor 220", 10],
  ]);
  expect(readRoster("roster.csv", roster).value?.map((pupil) => pupil.marks.reads)).toEqual([2, 1, 3]);
});

test("every line that demo/README.md shows stands in the demo", () => {
  const demo = new Set(text("demo/harbour.json").split("\n").map(plain));
  const shown = blocks("demo/README.md", "json").flatMap((block) => block.split("\n").map(plain));
  expect(shown.length).toBeGreaterThan(30);
  expect(shown.filter((line) => line !== "" && !demo.has(line))).toEqual([]);
});

/** Without its indent and the comma at its end. */
function plain(line: string): string {
  return line.trim().replace(/,$/, "");
}
