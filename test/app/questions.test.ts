// The six first questions in the built page: an answer at once that grows, errors beside the field and above, nothing lost.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect } from "vitest";
import { accessibilityFaults, browserTest, type OpenedPage, openPage } from "./harness.ts";

const heading = (page: Page, text: string) => page.locator("h1", { hasText: text }).waitFor();
const goOn = (page: Page) => page.getByRole("button", { name: "Go on" }).click();
const answer = (page: Page) => page.locator("main").textContent();

describe("six questions", () => {
  let opened: OpenedPage;
  const profile = mkdtempSync(join(tmpdir(), "benchday-questions-"));
  beforeAll(async () => {
    opened = await openPage({ width: 390, hash: "#/first", profile, now: "2026-11-25T10:00:00" }).catch(() => opened);
  });
  afterAll(async () => {
    await opened?.close();
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  });

  browserTest("what is wrong stands beside the field and above, and the list above takes the focus", async () => {
    const { page } = opened;
    await page.getByRole("link", { name: "Answer six questions" }).click();
    await heading(page, "How many pupils?");
    await page.fill("#q-count", "thirty");
    expect(await page.locator(".problem").count()).toBe(0);
    await goOn(page);
    await page.waitForFunction(() => document.activeElement?.className === "message");
    const words = "Found: “thirty”. Expected: a whole number from 2 to 60.";
    expect(await page.locator(".problem").textContent()).toBe(words);
    expect(await page.locator(".message li").textContent()).toBe(`pupils: ${words}`);
    await page.locator(".message li button").click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("q-count");
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  browserTest("the answer grows: teams, then days and things, then which lessons can be held, then the sum", async () => {
    const { page } = opened;
    await page.fill("#q-count", "30");
    await goOn(page);
    await heading(page, "When do you meet?");
    // 30 in threes.
    await page.getByText(/with 10 teams/).waitFor();
    expect(await answer(page)).not.toContain("in use");
    await page.getByLabel("day", { exact: true }).fill("14");
    await page.getByLabel("month").selectOption({ label: "January" });
    await page.getByLabel("year").fill("2027");
    await page.fill("#q-start", "9:00");
    await goOn(page);
    await heading(page, "Which lessons?");
    for (const box of await page.locator("input[type=checkbox]").all()) if (await box.isChecked()) await box.uncheck();
    await page.getByLabel("The signal lamp").check();
    await goOn(page);
    await heading(page, "What have you got?");
    // The signal lamp builds on the lighthouse, which is put in before it, a week earlier.
    await expect
      .poll(() => page.locator(".bench:has(.at.tick) b bdi").allTextContents())
      .toEqual(["The lighthouse", "The signal lamp"]);
    expect(await page.locator(".at", { hasText: "21 Jan" }).count()).toBe(1);
    await page.locator(".takes").waitFor();
    expect(await page.locator(".takes").textContent()).not.toContain("to get");
    await page.fill("#q-harbour-basic", "12");
    await goOn(page);
    await heading(page, "Which computers?");
    await page.getByText("2 of 2 lessons can be held with what is there").waitFor();
    // In use, to spare, there, to get: of computers nothing was said yet.
    const computers = page.locator(".takes tr", { has: page.locator("th", { hasText: "computer" }) }).locator("td");
    expect((await computers.allTextContents()).slice(2)).toEqual(["—", "—"]);
    await page.fill("#q-count", "0");
    await goOn(page);
    await heading(page, "What may it cost?");
    await page.getByText("0 of 2 lessons can be held with what is there").waitFor();
    expect(await answer(page)).not.toContain("€");
  });

  browserTest("answers survive a reload and the back button", async () => {
    const { page } = opened;
    await page.reload();
    await heading(page, "What may it cost?");
    await page.getByText("30 pupils in teams of 3").waitFor();
    await page.goBack();
    await heading(page, "Which computers?");
    expect(await page.inputValue("#q-count")).toBe("0");
    await page.fill("#q-count", "10");
    await goOn(page);
    await heading(page, "What may it cost?");
  });

  browserTest("a sum comes from the teacher's own price alone", async () => {
    const { page } = opened;
    await goOn(page);
    await heading(page, "Your first answer");
    await page.getByText("Without a price of your own there is no sum.").waitFor();
    expect(await answer(page)).not.toContain("€");
    expect(await accessibilityFaults(page)).toEqual([]);
    // Two boxes fewer than teams: eight boxes are there, ten teams need ten.
    await page.getByRole("link", { name: "change: What have you got?" }).click();
    await page.fill("#q-harbour-basic", "8");
    await goOn(page);
    await heading(page, "Your first answer");
    await page.getByRole("link", { name: "change: What may it cost?" }).click();
    await page.fill("#q-price", "38,50");
    await goOn(page);
    await heading(page, "Your first answer");
    const sum = page.getByText(/^\d+ boxes: €/);
    await sum.waitFor({ timeout: 30_000 });
    const [, boxes = "", euro = ""] = /(\d+) boxes: €(\d+\.\d\d)/.exec((await sum.textContent()) ?? "") ?? [];
    // Ten teams with eight boxes lack two boards; spares for a chance of 95 % may ask for more. The sum is boxes times price.
    expect(Number(boxes)).toBeGreaterThanOrEqual(2);
    expect(Number(euro)).toBe(Number(boxes) * 38.5);
    // With less to spend than one box costs, the same boxes are named with what is short: the sum less the ten euro.
    await page.getByRole("link", { name: "change: What may it cost?" }).click();
    await page.fill("#q-currency", "Euro");
    await page.fill("#q-budget", "10");
    await goOn(page);
    await heading(page, "Your first answer");
    await page
      .getByText(`${boxes} boxes for all lessons cost €${euro}, €${(Number(euro) - 10).toFixed(2)} more than may be spent.`)
      .waitFor({ timeout: 30_000 });
    expect(await answer(page)).not.toContain("do not bring");
  });

  browserTest("the class is kept, opens on Today, and what was assumed was told", async () => {
    const { page } = opened;
    expect(await answer(page)).toContain("Pupils have numbers in place of names.");
    await page.getByRole("button", { name: "Keep this class" }).click();
    await heading(page, "The lighthouse");
    await page.getByText("10 teams, 30 of 30 here").waitFor({ timeout: 30_000 });
    await page.locator(".block", { hasText: "on this computer" }).waitFor();
    await page.reload();
    await heading(page, "The lighthouse");
    expect(opened.faults).toEqual([]);
  });
});

browserTest("nothing known at all: six taps on *I do not know yet* give an answer, and every assumption is told", async () => {
  const { page, faults, close } = await openPage({ width: 390, hash: "#/questions/1", now: "2026-11-25T10:00:00" });
  for (let n = 0; n < 6; n += 1) {
    const before = await page.locator("h1").textContent();
    await page.getByRole("button", { name: "I do not know yet" }).click();
    await page.waitForFunction((text) => document.querySelector("h1")?.textContent !== text, before);
  }
  await heading(page, "Your first answer");
  const told = await page
    .locator("section, .bench", { has: page.locator("h2", { hasText: "What is assumed" }) })
    .last()
    .textContent();
  for (const words of [
    "30 pupils",
    "10 sockets in the room",
    "sums are in EUR",
    "the first lesson on",
    "all lessons",
    "nothing is in the cupboard",
    "10 computers",
    "no limit",
    "95 %",
  ])
    expect(told).toContain(words);
  expect(faults).toEqual([]);
  await close();
});
