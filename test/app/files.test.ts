// Opening files in the built page: whatever is opened, the class that was open stays as it is until a whole class file was read.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { readClassFile, writeClassFile } from "../../src/school/file/index.ts";
import { sample } from "../sample.ts";
import { browserTest, type OpenedPage, openPage, withDemo } from "./harness.ts";
import { mangled } from "./mangled.ts";

const demoText = readFileSync(new URL("../../demo/harbour.json", import.meta.url), "utf8");
const bytes = (text: string) => Buffer.from(text, "utf8");

const give = (page: Page, name: string, buffer: Buffer) =>
  page.locator("input[type=file]").first().setInputFiles({ name, mimeType: "application/octet-stream", buffer });
const fingerprint = async (page: Page) =>
  /class file, (\w{4})/.exec((await page.locator("footer.block").textContent()) ?? "")?.[1];
/** What the page says to the file: anything but that it is being read. */
const answered = (page: Page) => page.locator(".opened").filter({ hasNotText: "Reading " }).waitFor();

describe("files that are no class file", () => {
  let opened: OpenedPage;
  beforeAll(async () => {
    opened = await withDemo({ hash: "#/settings" }).catch(() => opened);
  });
  afterAll(() => opened?.close());

  const cases: [name: string, file: string, content: Buffer, says: RegExp, tries: RegExp][] = [
    ["nothing", "class.json", bytes(""), /nothing in it/, /another copy/],
    ["a picture", "photo.png", Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a]), /a picture/, /\.json/],
    ["a list of names", "names.csv", bytes("name,reads\nA,1\nB,2\n"), /a table/, /Pupils/],
    ["a kit", "kit.yaml", readFileSync("kits/harbour-basic.yaml"), /list of a kit/, /Cupboard/],
    ["a newer class file", "new.json", bytes(demoText.replace("benchday-class/1", "benchday-class/7")), /new\.json/, /newer/],
    ["some other JSON", "other.json", bytes('{"name": "x"}'), /other\.json/, /./],
    ["half a class file", "half.json", bytes(demoText.slice(0, 4000)), /half\.json.*line/s, /cut off/],
    ["a class file with a word for a number", "word.json", bytes(demoText.replace('"count": 6', '"count": "six"')), /line/, /./],
  ];
  for (const [name, file, content, says, tries] of cases)
    browserTest(`${name}: told what it is and what to try`, async () => {
      const { page } = opened;
      const before = await fingerprint(page);
      await give(page, file, content);
      await answered(page);
      const told = (await page.locator(".opened").textContent()) ?? "";
      expect(told).toMatch(says);
      expect(told).toMatch(tries);
      expect(told).toContain("The class that is open stays as it is.");
      expect(await fingerprint(page)).toBe(before);
    });

  browserTest("fifty million bytes are not even read", async () => {
    const { page } = opened;
    const folder = mkdtempSync(join(tmpdir(), "benchday-large-"));
    const path = join(folder, "large.json");
    writeFileSync(path, Buffer.alloc(50_000_000, "{"));
    await page.locator("input[type=file]").first().setInputFiles(path);
    await page.locator(".opened", { hasText: "large.json: this file is larger than any class file." }).waitFor({ timeout: 2000 });
    rmSync(folder, { recursive: true });
  });

  browserTest("a file dropped beside the button is opened too", async () => {
    const { page } = opened;
    const data = await page.evaluateHandle(() => {
      const transfer = new DataTransfer();
      transfer.items.add(new File(["name,reads\nA,1\nB,2\n"], "dropped.csv"));
      return transfer;
    });
    await page.dispatchEvent("h1", "drop", { dataTransfer: data });
    await page.locator(".opened", { hasText: "dropped.csv" }).waitFor();
    expect(opened.faults).toEqual([]);
  });

  browserTest(
    `${sample(200, 1000)} mangled class files: refused with a place, or opened whole after their doubts were told`,
    async () => {
      const { page } = opened;
      const before = await fingerprint(page);
      const random = seededRandom(7, "mangled class files");
      for (let n = 0; n < sample(200, 1000); ) {
        const { text, how } = mangled(demoText, random);
        // What the reader takes without a doubt would be opened at once; such a file is no test of refusing.
        const read = readClassFile("m.json", text);
        if (read.value !== null && read.problems.length === 0) continue;
        n += 1;
        await give(page, `m${n}.json`, bytes(text));
        await page
          .locator(".opened", { hasText: `m${n}.json` })
          .filter({ hasNotText: "Reading " })
          .waitFor({ timeout: 10_000 });
        expect(await fingerprint(page), how).toBe(before);
      }
      expect(opened.faults).toEqual([]);
    },
    120_000,
  );
});

test(`${sample(500, 10_000)} mangled class files: the reader refuses with a place, or what it takes is written and read back equal`, () => {
  const random = seededRandom(11, "mangled class files");
  for (let n = 0; n < sample(500, 10_000); n += 1) {
    const { text, how } = mangled(demoText, random);
    const started = performance.now();
    const { value, problems } = readClassFile("m.json", text);
    expect(performance.now() - started, how).toBeLessThan(1000);
    if (value === null) {
      expect(problems.length, how).toBeGreaterThan(0);
      for (const problem of problems) expect(problem.place?.line, how).toBeGreaterThan(0);
      continue;
    }
    const written = writeClassFile(value);
    const again = readClassFile("m.json", written);
    // JSON knows a minus nought and writes it as nought: they are the same number.
    expect(again.value, how).toEqual(JSON.parse(JSON.stringify(value)));
    expect(writeClassFile(again.value!), how).toBe(written);
  }
});

describe("a class file goes round", () => {
  browserTest("what was saved as a file opens on another computer and is the same", async () => {
    const first = await withDemo({ hash: "#/settings" });
    const print = await fingerprint(first.page);
    const [download] = await Promise.all([first.page.waitForEvent("download"), first.page.locator("#save-copy").click()]);
    expect(download.suggestedFilename()).toMatch(/^class-[A-Za-z0-9-]+-\d{4}-\d\d-\d\d\.json$/);
    const copy = readFileSync(await download.path());
    await first.page.getByText("The last copy as a file is of today.").waitFor();
    const second = await openPage({ hash: "#/first" });
    await give(second.page, "class.json", copy);
    await second.page.waitForFunction(() => location.hash === "#/today");
    expect(await fingerprint(second.page)).toBe(print);
    expect([...first.faults, ...second.faults]).toEqual([]);
    await first.close();
    await second.close();
  });
});
