// Printing from the built page: the browser's own print gives exactly the sheets that were promised, on A4 and on Letter.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect } from "vitest";
import { accessibilityFaults, browserTest, goTo, type OpenedPage, withDemo } from "./harness.ts";

/** Pages and their sizes in mm, read from the file itself: Chromium writes each page as an object with its box in points. */
function pagesOf(pdf: Buffer): { count: number; widths: number[] } {
  const folder = mkdtempSync(join(tmpdir(), "benchday-pdf-"));
  const path = join(folder, "a.pdf");
  writeFileSync(path, pdf);
  const info = spawnSync("pdfinfo", ["-f", "1", "-l", "999", path], { encoding: "utf8" });
  rmSync(folder, { recursive: true, force: true });
  if (info.status === 0)
    return {
      count: Number(/^Pages:\s+(\d+)/m.exec(info.stdout)?.[1]),
      widths: [...info.stdout.matchAll(/^Page\s+\d+ size:\s+([\d.]+) x/gm)].map((m) => Math.round((Number(m[1]) / 72) * 25.4)),
    };
  // Without pdfinfo: the tree of pages says how many it has.
  const text = pdf.toString("latin1");
  return {
    count: Math.max(...[...text.matchAll(/\/Type\s*\/Pages[^>]*?\/Count\s+(\d+)/g)].map((m) => Number(m[1]))),
    widths: [...text.matchAll(/\/MediaBox\s*\[0 0 ([\d.]+)/g)].map((m) => Math.round((Number(m[1]) / 72) * 25.4)),
  };
}

const ready = (page: Page) => page.locator("#print-now:not([aria-disabled])").waitFor({ timeout: 45_000 });
const promised = async (page: Page) =>
  Number(/Print (\d+) sheet/.exec((await page.locator("#print-now").textContent()) ?? "")?.[1]);

describe("the browser's own print", () => {
  let opened: OpenedPage;
  beforeAll(async () => {
    opened = await withDemo({ hash: "#/print" }).catch(() => opened);
  });
  afterAll(() => opened?.close());

  // Ten teams in class 7b, eight in class 7c: one run sheet for the teacher, one tray list a team. 210 mm: ISO 216; 216 mm: 8.5 in.
  const cases: [name: string, address: string, sheets: number | null, text: string][] = [
    ["everything for the next lesson", "#/print", 11, "Run sheet"],
    ["everything for a lesson of the other class", "#/print/all/7c/lighthouse/2027-01-14", 9, "Run sheet"],
    ["a run sheet alone", "#/print/run-sheet/7b/barrier/2027-03-09", 1, "The barrier"],
    ["tray lists alone", "#/print/tray/7b/signal-lamp/2027-01-26", 10, "Tray list"],
    ["a rota", "#/print/rota/7b", null, "Class 7b"],
    ["labels", "#/print/label", null, "box 1, a1"],
    ["the order", "#/print/order", null, "Pier Supplies"],
  ];
  for (const [name, address, sheets, text] of cases)
    browserTest(`${name}: as many pages as promised`, async () => {
      const { page } = opened;
      await goTo(page, address);
      await ready(page);
      const said = await promised(page);
      if (sheets !== null) expect(said).toBe(sheets);
      const { count, widths } = pagesOf(await page.pdf({ preferCSSPageSize: true }));
      expect(count).toBe(said);
      expect(new Set(widths)).toEqual(new Set([210]));
      const drawn = await page.evaluate(() => document.querySelector(".preview > div")?.shadowRoot?.textContent ?? "");
      expect(drawn).toContain(text);
    });

  browserTest("Letter has as many pages as A4", async () => {
    const { page } = opened;
    await goTo(page, "#/print/all/7b/lighthouse/2027-01-12");
    await ready(page);
    await page.getByRole("button", { name: "Letter" }).click();
    await page.locator("[aria-pressed=true]", { hasText: "Letter" }).waitFor();
    await page.waitForFunction(() =>
      document.adoptedStyleSheets.some((s) => [...s.cssRules].some((r) => /letter/i.test(r.cssText))),
    );
    await ready(page);
    const { count, widths } = pagesOf(await page.pdf({ preferCSSPageSize: true }));
    expect(count).toBe(11);
    expect(new Set(widths)).toEqual(new Set([216]));
  });

  browserTest("what is drawn is what the paper's file holds", async () => {
    const { page } = opened;
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save as a file" }).click(),
    ]);
    const html = readFileSync(await download.path(), "utf8");
    const drawn = await page.evaluate(() =>
      [...(document.querySelector(".preview > div")?.shadowRoot?.querySelectorAll("article") ?? [])].map(
        (sheet) => sheet.outerHTML,
      ),
    );
    // The browser's own reading of the file, in a page without a policy.
    const other = await opened.context.newPage();
    const theirs = await other.evaluate(
      (text) =>
        [...new DOMParser().parseFromString(text, "text/html").querySelectorAll("article")].map((sheet) => sheet.outerHTML),
      html,
    );
    await other.close();
    expect(drawn).toHaveLength(11);
    expect(drawn).toEqual(theirs);
  });

  browserTest("leaving the place leaves nothing for the printer behind", async () => {
    const { page } = opened;
    await goTo(page, "#/today");
    expect(await page.locator(".for-print").count()).toBe(0);
    expect(await page.evaluate(() => document.adoptedStyleSheets.length)).toBe(0);
  });

  browserTest("the place has no accessibility faults and no sideways scroll at 320 px", async () => {
    const { page } = opened;
    await goTo(page, "#/print");
    await ready(page);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.setViewportSize({ width: 320, height: 700 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
    expect(opened.faults).toEqual([]);
  });
});
