// Kits and tables after accidents: never a throw, never a value beside an error, never an error without its place.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { hasErrors, type ProblemBase, type Reading, seededRandom } from "../../src/base/index.ts";
import { readKit, readKitList, readRoster, readStockCsv, rosterCsv, stockCsv } from "../../src/school/file/index.ts";
import { sample } from "../sample.ts";
import { afterAccident } from "./accidents.ts";
import { patience } from "./patience.ts";

const kit = readFileSync(new URL("../../kits/harbour-basic.yaml", import.meta.url), "utf8");
const pupils = ["Amara Okonjo", "Haddad, Bilal", '"Chiara"', "=Dilnoza", "ليلى"].map((name, i) => ({
  id: `p${i + 1}`,
  name,
  marks: { reads: i % 3, runs: i / 4 },
}));
const roster = rosterCsv(pupils, { separator: ";", decimalMark: "," });
const stock = stockCsv(
  ["resistor 220", "led red", "servo", "adapter 2000mA"].map((item, i) => ({ item, count: i * 7, box: `box ${i}, a1` })),
  { separator: "," },
);

const readers: [name: string, text: string, read: (text: string) => Reading<unknown, ProblemBase>][] = [
  ["a kit", kit, (text) => readKit("f", text)],
  ["a roster", roster, (text) => readRoster("f", text)],
  ["a roster as bytes", roster, (text) => readRoster("f", Uint8Array.from([...text].map((c) => c.charCodeAt(0) & 255)))],
  ["a stock list", stock, (text) => readStockCsv("f", text)],
  ["a kit list", stock, (text) => readKitList("f", text)],
];
for (const [name, text, read] of readers)
  test(`${name} after accidents`, () => {
    for (let seed = 1; seed <= sample(400, 10_000); seed += 1) {
      const broken = afterAccident(text, seededRandom(seed, name));
      const { value, problems } = read(broken);
      const errors = problems.filter((p) => p.severity !== "warning");
      expect(value === null, `seed ${seed}`).toBe(errors.length > 0);
      for (const { place } of problems) {
        expect(place?.line, `seed ${seed}`).toBeGreaterThan(0);
        expect(place?.column, `seed ${seed}`).toBeGreaterThan(0);
      }
    }
  });

const long: [name: string, text: string][] = [
  ["twenty thousand wrong items", `item,count\n${"teapot of 220,x\n".repeat(19_999)}`],
  ["a cell of a hundred thousand blanks", `name,reads\n"${" ".repeat(100_000)}=",1\n`],
  ["a hundred thousand quotes", '"'.repeat(100_000)],
  ["a hundred thousand separators", ";".repeat(100_000)],
];
for (const [name, text] of long)
  test(`${name} come to an end`, { timeout: patience }, () => {
    for (const read of [readStockCsv, readRoster, readKitList]) {
      const { value, problems } = read("f", text);
      expect(value === null).toBe(hasErrors(problems));
    }
  });
