// The page by keys alone: in each place everything is reached once, in the order of reading, with a ring that is seen; places are
// gone to and come back from; acts are done and taken back.
import { afterAll, beforeAll, describe, expect } from "vitest";
import { browserTest, goTo, type OpenedPage, openPage, planned, withDemo } from "./harness.ts";
import { placesBefore, placesOfDemo } from "./places.ts";

interface Stop {
  readonly what: string;
  readonly key: number;
  readonly top: number;
  readonly ring: number;
}

describe("a walk with Tab", () => {
  const opened: Partial<Record<"demo" | "empty", OpenedPage>> = {};
  afterAll(async () => {
    await Promise.all(Object.values(opened).map((o) => o.close()));
  });
  for (const [which, open, places] of [
    ["demo", withDemo, placesOfDemo],
    ["empty", openPage, placesBefore],
  ] as const)
    for (const [name, hash] of places)
      browserTest(
        `reaches everything in ${name} once, in order, with a ring`,
        async () => {
          opened[which] ??= await open({ width: 1280 });
          const { page } = opened[which];
          await goTo(page, hash);
          // Papers that are still being made bring links when they are done.
          await page.locator("#print-now[aria-disabled]").waitFor({ state: "detached" });
          const all = await numberWhenStill(page);
          // The walk begins before everything: the browser remembers where the focus was, even when it is gone.
          await page.evaluate(() => {
            document.getElementById("walk-begins")?.remove();
            const before = document.createElement("span");
            before.id = "walk-begins";
            before.tabIndex = 0;
            document.body.prepend(before);
            before.focus();
          });
          const stops: Stop[] = [];
          for (let i = 0; i < all + 4; i += 1) {
            await page.keyboard.press("Tab");
            const stop = await stopNow(page);
            if (stop === null || stops.some((s) => s.key === stop.key)) break;
            stops.push(stop);
          }
          expect(stops.filter((s) => s.ring < 2)).toEqual([]);
          expect(stops.map((s) => s.key)).toEqual(Array.from({ length: all }, (_, n) => n));
        },
        60_000,
      );
});

/** As `numberFocusable`, once nothing more comes: lists that are read from the storage arrive a moment after their place. */
async function numberWhenStill(page: OpenedPage["page"]): Promise<number> {
  let before = -1;
  for (let tries = 0; tries < 20; tries += 1) {
    const now = await numberFocusable(page);
    if (now === before) return now;
    before = now;
    await page.waitForTimeout(300);
  }
  return before;
}

/** Numbers what can take the focus in the order of the page; of round marks that belong together only the chosen one can. @returns how many. */
function numberFocusable(page: OpenedPage["page"]): Promise<number> {
  return page.evaluate(() => {
    const all = "a[href], button, select, textarea, input, summary, iframe";
    let n = 0;
    const groups = new Set<string>();
    for (const element of document.querySelectorAll<HTMLElement>(all)) {
      // What is folded away has a box and cannot be reached: that is as it should be.
      if (!element.checkVisibility() || element.getClientRects().length === 0) continue;
      if (element instanceof HTMLInputElement && element.type === "radio") {
        const inGroup = [...document.querySelectorAll<HTMLInputElement>(`input[type=radio]`)].filter(
          (r) => r.name === element.name,
        );
        const chosen = inGroup.find((r) => r.checked) ?? inGroup[0];
        if (groups.has(element.name) || element !== chosen) continue;
        groups.add(element.name);
      }
      element.dataset.walk = String(n);
      n += 1;
    }
    return n;
  });
}

function stopNow(page: OpenedPage["page"]): Promise<Stop | null> {
  return page.evaluate(() => {
    const element = document.activeElement as HTMLElement | null;
    if (element === null || element === document.body || element.dataset.walk === undefined) return null;
    const style = getComputedStyle(element);
    const ring =
      element.tagName === "IFRAME" || style.outlineStyle === "none"
        ? element.tagName === "IFRAME"
          ? 3
          : 0
        : Number.parseFloat(style.outlineWidth);
    return {
      what: `${element.tagName} ${element.textContent?.slice(0, 30)}`,
      key: Number(element.dataset.walk),
      top: element.getBoundingClientRect().top,
      ring,
    };
  });
}

describe("acts by keys", () => {
  let opened: OpenedPage;
  beforeAll(async () => {
    if (process.env.REQUIRE_TOOLS || browserTest !== undefined) opened = await withDemo({ width: 1280 }).catch(() => opened);
  });
  afterAll(() => opened?.close());

  browserTest("a place takes the focus to its heading, and the back button comes back to it", async () => {
    const { page } = opened;
    await page.getByRole("link", { name: "Course" }).focus();
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => location.hash === "#/course" && document.activeElement?.tagName === "H1");
    expect(await page.title()).toContain("Course");
    await page.goBack();
    await page.waitForFunction(() => location.hash === "#/today" && document.activeElement?.tagName === "H1");
  });

  browserTest("a place that comes a moment later than its name takes the focus to its heading too", async () => {
    const { page } = opened;
    for (const hash of ["#/questions/2", "#/today"]) {
      await goTo(page, hash);
      await page.waitForTimeout(400);
      expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("H1");
    }
  });

  browserTest("a tick is done with Space, taken back with Ctrl+Z, done again with Ctrl+Shift+Z", async () => {
    const { page } = opened;
    await goTo(page, "#/today");
    const box = page.getByRole("checkbox").first();
    await box.focus();
    await page.keyboard.press("Space");
    expect(await box.isChecked()).toBe(true);
    await page.keyboard.press("Control+z");
    expect(await box.isChecked()).toBe(false);
    await page.keyboard.press("Control+Shift+Z");
    expect(await box.isChecked()).toBe(true);
    await page.keyboard.press("Control+z");
    await planned(page);
  });

  browserTest("in a field Ctrl+Z belongs to the field", async () => {
    const { page } = opened;
    await goTo(page, "#/today");
    await page.getByRole("checkbox").first().check();
    await goTo(page, "#/course");
    await page.getByLabel("begins at").last().focus();
    await page.keyboard.type("1");
    await page.keyboard.press("Control+z");
    expect(await page.locator("footer.block").getByText("Do it again").count()).toBe(0);
    await page.locator("footer.block").getByRole("button", { name: "Undo" }).click();
    await planned(page);
  });

  browserTest("a lesson goes a place later by keys, and back by undo", async () => {
    const { page } = opened;
    await goTo(page, "#/course");
    const names = () => page.locator(".lesson h2").allTextContents();
    const before = await names();
    await page.getByRole("button", { name: "Change The lighthouse" }).focus();
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "One place later" }).focus();
    await page.keyboard.press("Enter");
    await expect.poll(names).toEqual([before[1], before[0], ...before.slice(2)]);
    await page.keyboard.press("Control+z");
    await expect.poll(names).toEqual(before);
  });

  const gone: [what: string, hash: string, button: RegExp, then: RegExp][] = [
    ["a cable is removed", "#/cupboard", /^Remove cable-03/, /^Remove cable-04/],
    ["the last computer is removed", "#/cupboard", /^Remove laptop-11/, /^Remove laptop-10/],
    ["the only power cut is removed", "#/course", /^Remove/, /power cut|Power cuts/i],
    ["the order is asked for", "#/order", /^Work out the order/, /./],
    ["the last undo is used", "#/today", /^Undo/, /./],
  ];
  for (const [what, hash, button, then] of gone)
    browserTest(`${what}: the focus goes to what stands in its place, and the act is told`, async () => {
      const { page } = opened;
      await goTo(page, hash);
      if (hash === "#/today") await page.getByRole("checkbox").first().check();
      const control = page.getByRole("button", { name: button }).last();
      await control.focus();
      await page.keyboard.press("Enter");
      await control.waitFor({ state: "detached" }).catch(() => {});
      const focused = () =>
        page.evaluate(() => {
          const element = document.activeElement;
          return element === document.body ? "nowhere" : (element?.getAttribute("aria-label") ?? element?.textContent ?? "");
        });
      await expect.poll(focused).toMatch(then);
      expect(await focused()).not.toBe("nowhere");
      if (hash === "#/order") return;
      await expect.poll(() => page.locator("#act-said").textContent()).not.toBe("");
      if (hash !== "#/today") await page.keyboard.press("Control+z");
      await planned(page);
    });
});
