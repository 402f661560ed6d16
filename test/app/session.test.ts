// The session in a real browser: acts outlive a reload with their way back, a second tab follows, the clock may go back.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, expect } from "vitest";
import { builtFile } from "./enginePage.ts";
import { browserTest, goTo, openPage, planned, withDemo } from "./harness.ts";

const folder = mkdtempSync(join(tmpdir(), "benchday-session-"));
afterAll(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));

browserTest("what was done and its way back are there after the browser was closed and opened", async () => {
  const profile = join(folder, "reload");
  const first = await withDemo({ profile });
  const box = first.page.getByRole("checkbox").first();
  await box.check();
  await first.page.locator("footer.block").getByText("on this computer").waitFor();
  await first.page.waitForTimeout(600);
  await first.close();
  const second = await openPage({ profile });
  await planned(second.page);
  const again = second.page.getByRole("checkbox").first();
  expect(await again.isChecked()).toBe(true);
  await second.page.locator("footer.block").getByRole("button", { name: "Undo" }).click();
  expect(await again.isChecked()).toBe(false);
  await second.close();
});

browserTest("a second tab follows the first one, acts nothing, and takes over when asked to", async () => {
  const { page, context, close } = await withDemo({ profile: join(folder, "tabs") });
  const other = await context.newPage();
  await other.goto(`${pathToFileURL(builtFile).href}#/today`);
  await other.getByText("This tab follows another one").waitFor();
  await planned(other);
  await page.bringToFront();
  await page.getByRole("checkbox").first().check();
  await expect.poll(() => other.getByRole("checkbox").first().isChecked()).toBe(true);
  await other.bringToFront();
  await other.getByRole("checkbox").nth(1).click();
  expect(await other.getByRole("checkbox").nth(1).isChecked()).toBe(false);
  expect(await other.locator("footer.block").getByText("before this page was opened").count()).toBe(1);
  await other.getByRole("button", { name: "Take over here" }).click();
  await other.getByText("This tab follows another one").waitFor({ state: "detached" });
  await page.getByText("This tab follows another one").waitFor();
  await close();
});

browserTest("a clock that went back is told, and nothing is lost", async () => {
  const profile = join(folder, "clock");
  const first = await withDemo({ profile });
  await first.page.getByRole("checkbox").first().check();
  await first.page.waitForTimeout(600);
  await first.close();
  const second = await openPage({ profile, now: "2012-01-01T08:00:00" });
  await second.page.getByText("which is before the class was last kept").waitFor();
  await second.close();
});

browserTest("another class of the file is chosen in the head and stays chosen", async () => {
  const { page, close } = await withDemo();
  await page.locator(".head select").selectOption({ label: "Class 7c" });
  await page.getByText("8 teams").waitFor();
  await goTo(page, "#/course");
  await page.locator("h1", { hasText: "Class 7c" }).waitFor();
  await page.reload();
  await page.locator("h1", { hasText: "Class 7c" }).waitFor();
  await close();
});

browserTest("a place that breaks says so and gives the class as a file", async () => {
  const { page, close } = await withDemo();
  // A fault is planted where every place looks: the heading of the course.
  await page.evaluate(() => {
    const create = document.createElement.bind(document);
    document.createElement = ((tag: string) => {
      if (tag === "h2" && location.hash === "#/course") throw new Error("planted");
      return create(tag);
    }) as typeof document.createElement;
    const createNs = document.createElementNS.bind(document);
    document.createElementNS = ((ns: string, tag: string) => {
      if (tag === "h2" && location.hash === "#/course") throw new Error("planted");
      return createNs(ns as "http://www.w3.org/1999/xhtml", tag as "a");
    }) as typeof document.createElementNS;
  });
  await page.getByRole("link", { name: "Course" }).click();
  await page.getByText("This page has a fault of ours").waitFor();
  const [file] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save a copy" }).click()]);
  expect(file.suggestedFilename()).toMatch(/^class-7b-7c-.*\.json$/);
  await page.getByRole("link", { name: "Today" }).click();
  await page.locator("h1", { hasText: "The lighthouse" }).waitFor();
  await close();
});
