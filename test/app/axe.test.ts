// No accessibility fault that axe-core 4.14 finds, on any place, wide and narrow; and lines that people can press are large enough.
//
// 24 CSS px is WCAG 2.2, 2.5.8; 44 in Today is our own goal after 2.5.5.
import { afterAll, describe, expect } from "vitest";
import { accessibilityFaults, browserTest, goTo, type OpenedPage, openPage, withDemo } from "./harness.ts";
import { placesBefore, placesOfDemo } from "./places.ts";

for (const width of [1280, 390]) {
  describe(`at ${width} px`, () => {
    const opened: Partial<Record<"demo" | "empty", OpenedPage>> = {};
    afterAll(async () => {
      await Promise.all(Object.values(opened).map((o) => o.close()));
    });
    for (const [which, open, places] of [
      ["demo", withDemo, placesOfDemo],
      ["empty", openPage, placesBefore],
    ] as const)
      for (const [name, hash] of places)
        browserTest(`${name} has no fault, and nothing to press is too small`, async () => {
          opened[which] ??= await open({ width });
          const { page, faults } = opened[which];
          await goTo(page, hash);
          await page.waitForTimeout(150);
          expect(await accessibilityFaults(page)).toEqual([]);
          expect(await tooSmall(page, hash === "#/today" ? 44 : 24)).toEqual([]);
          expect(faults).toEqual([]);
        });
  });
}

/** Everything that can be pressed whose box is smaller; a box to tick counts with its label. */
function tooSmall(page: OpenedPage["page"], least: number): Promise<string[]> {
  return page.evaluate((most) => {
    const main = most > 24 ? "main " : "";
    const all = ["a[href]", "button", "select", "textarea", "input:not([type=hidden])", "summary"].map((s) => main + s).join(",");
    return [...document.querySelectorAll<HTMLElement>(all)].flatMap((element) => {
      const box = (
        element.matches("input[type=checkbox], input[type=radio]") ? (element.closest("label") ?? element) : element
      ).getBoundingClientRect();
      const unseen =
        element.closest(".unseen, .skip, [hidden]") !== null ||
        box.width === 0 ||
        getComputedStyle(element).visibility === "hidden";
      return unseen || (box.height >= most - 0.5 && box.width >= Math.min(most, 24) - 0.5)
        ? []
        : [`${element.tagName} ${element.textContent?.slice(0, 40)} ${Math.round(box.width)}×${Math.round(box.height)}`];
    });
  }, least);
}
