// Settings in the built page: what is set holds, what is taken away comes back, a day before and a colleague's copy come in.
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect } from "vitest";
import { accessibilityFaults, browserTest, goTo, type OpenedPage, openPage, planned, withDemo } from "./harness.ts";

const demoText = readFileSync(new URL("../../demo/harbour.json", import.meta.url), "utf8");
const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name, exact: typeof name === "string" });
const kept = (page: Page) => page.locator("footer.block", { hasText: "on this computer" }).waitFor();
const set = async (page: Page, field: string, text: string): Promise<void> => {
  await page.fill(field, text);
  await page.keyboard.press("Tab");
};

describe("settings", () => {
  let opened: OpenedPage;
  beforeAll(async () => {
    opened = await withDemo({ width: 390, hash: "#/settings" }).catch(() => opened);
  });
  afterAll(() => opened?.close());

  browserTest("nothing for axe to find, no sideways scroll at 320 px, also in large type", async () => {
    const { page } = opened;
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.getByLabel("larger", { exact: true }).check();
    await page.setViewportSize({ width: 320, height: 700 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
    await page.getByLabel("usual", { exact: true }).check();
    await page.setViewportSize({ width: 390, height: 844 });
  });

  browserTest("size of type, stronger lines and paper hold after a reload", async () => {
    const { page } = opened;
    await page.getByLabel("large", { exact: true }).check();
    await page.getByLabel("Stronger lines and text").check();
    await page.getByLabel(/^Letter/).check();
    await page.waitForTimeout(300);
    await page.reload();
    await page.locator("h1", { hasText: "Settings" }).waitFor();
    await page.waitForFunction(() => document.documentElement.classList.contains("strong-lines"));
    // 118 % of the browser's 16 px.
    expect(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize)).toBe("18.88px");
    expect(await page.getByLabel(/^Letter/).isChecked()).toBe(true);
    await page.getByLabel("usual", { exact: true }).check();
    await page.getByLabel("Stronger lines and text").uncheck();
  });

  const wrong: [name: string, field: string, text: string, says: RegExp][] = [
    ["sockets in words", "#sockets", "six", /Found: “six”. Expected: a whole number from 0 to 200/],
    ["no sockets said", "#sockets", "", /Nothing stands here/],
    ["a currency with a slip", "#currency", "EURR", /Did you mean “EUR”/],
    ["a class without a name", "#class-7b", " ", /A class needs a name/],
  ];
  for (const [name, field, text, says] of wrong)
    browserTest(`${name}: said beside the field, which keeps what was typed, and nothing changes`, async () => {
      const { page } = opened;
      const before = await page.inputValue(field);
      await set(page, field, text);
      await page.locator(".problem", { hasText: says }).waitFor();
      expect(await page.inputValue(field)).toBe(text);
      await set(page, field, before);
      await expect.poll(() => page.locator(".problem").count()).toBe(0);
      expect(await page.locator("main .says").count()).toBe(0);
    });

  browserTest("a name is an act that can be taken back", async () => {
    const { page } = opened;
    await set(page, "#class-7b", "Harbour builders");
    await page.locator(".head", { hasText: "Harbour builders" }).waitFor();
    await page.locator("main .says").getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => page.inputValue("#class-7b")).toBe("Class 7b");
  });

  browserTest("a day before: a look into it, then it is taken back, and that can be taken back", async () => {
    const { page } = opened;
    await set(page, "#room", "Boat house");
    await kept(page);
    await expect.poll(() => page.locator("#days-before tbody tr").count()).toBeGreaterThan(1);
    // The oldest state is the class as it was opened.
    if (await button(page, /^Show all/).count()) await button(page, /^Show all/).click();
    await page.locator("#days-before button", { hasText: "look into it" }).last().click();
    await button(page, "Take this state back").click();
    await expect.poll(() => page.inputValue("#room")).toBe("Room 12");
    await page.locator("#days-before .says", { hasText: "The class is again as it was on" }).waitFor();
    await page.locator("#days-before .says").getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => page.inputValue("#room")).toBe("Boat house");
  });

  browserTest("after a reload the undo names what it takes back: the day before, and what was done before that", async () => {
    const { page } = opened;
    const undo = page.locator("footer.block").getByRole("button", { name: /^Undo: / });
    await page.locator("#days-before button", { hasText: "look into it" }).last().click();
    await button(page, "Take this state back").click();
    await expect.poll(() => page.inputValue("#room")).toBe("Room 12");
    await kept(page);
    await page.reload();
    await expect
      .poll(() => undo.getAttribute("aria-label"))
      .toMatch(/^Undo: The class is again as it was on .* 20\d\d, \d\d:\d\d\.$/);
    await undo.click();
    await expect.poll(() => page.inputValue("#room")).toBe("Boat house");
    await expect.poll(() => undo.getAttribute("aria-label")).toBe("Undo: What is known of the room changed.");
  });

  browserTest(
    "a colleague's copy comes together with what was changed here, and the one thing that both changed is chosen",
    async () => {
      const { page } = opened;
      // There: the room and the sockets; here since: the room.
      const copy = demoText.replace('"name": "Room 12", "sockets": 6', '"name": "Cellar", "sockets": 9');
      await page
        .locator("input[type=file]")
        .nth(1)
        .setInputFiles({ name: "copy.json", mimeType: "application/json", buffer: Buffer.from(copy) });
      await page.getByText("One thing was changed in both.").waitFor();
      await page.getByLabel(/as it is in the copy/).check();
      await button(page, "Take both together").click();
      const joined = page.locator("main .says", { hasText: "The copy copy.json was joined with this class." });
      await joined.waitFor();
      await expect.poll(() => page.inputValue("#room")).toBe("Cellar");
      expect(await page.inputValue("#sockets")).toBe("9");
      await joined.getByRole("button", { name: "Undo" }).click();
      await expect.poll(() => page.inputValue("#room")).toBe("Boat house");
      expect(await page.inputValue("#sockets")).toBe("6");
    },
  );

  browserTest("a problem report is a text without names", async () => {
    const { page } = opened;
    const [download] = await Promise.all([page.waitForEvent("download"), button(page, "Save a problem report").click()]);
    const text = readFileSync(await download.path(), "utf8");
    expect(text).toContain("Problem report of Benchday");
    expect(text).toContain("pupils: 54");
    const names = [...demoText.matchAll(/"name": "([^"]+)"/g)].map((m) => m[1] ?? "");
    expect(names.length).toBeGreaterThan(50);
    expect(names.filter((name) => text.includes(name))).toEqual([]);
  });

  browserTest("a class is taken off and brought back; so is everything", async () => {
    const { page } = opened;
    const here = () => button(page, /^take .* off this computer$/).count();
    await expect.poll(here).toBe(1);
    await button(page, /^take .* off this computer$/)
      .first()
      .click();
    await expect.poll(here).toBe(0);
    await button(page, "Bring back").click();
    await expect.poll(here).toBe(1);
    await button(page, "Forget everything on this computer").click();
    await page.getByText("No class is kept here.").waitFor();
    await button(page, "Bring back").click();
    await expect.poll(here).toBe(1);
    expect(opened.faults).toEqual([]);
  });
});

browserTest("without a class: the language, how it looks, and a file can be opened", async () => {
  const french = demoText.replace('"language": "en"', '"language": "fr"');
  expect(french).not.toBe(demoText);
  const { page, faults, close } = await openPage({ width: 390, hash: "#/settings" });
  await page.locator("h1", { hasText: "Settings" }).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  await page
    .locator("input[type=file]")
    .first()
    .setInputFiles({ name: "c.json", mimeType: "application/json", buffer: Buffer.from(french) });
  await page.waitForFunction(() => location.hash === "#/today");
  await planned(page);
  // A language that the page has no words in is told, not passed over.
  await page.locator("footer.block").getByText("This class asks for fr. There are no words in it yet.").waitFor();
  await goTo(page, "#/settings");
  expect(faults).toEqual([]);
  await close();
});
