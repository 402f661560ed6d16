// Nothing scrolls sideways and no words are cut off: on a narrow phone (WCAG 1.4.10), with longer words, from right to left, with
// twice the type (1.4.4), and with the spacing of WCAG 1.4.12. Nothing moves by itself.
import { afterAll, describe, expect } from "vitest";
import { browserTest, goTo, type OpenedPage, openPage, withDemo } from "./harness.ts";
import { placesBefore, placesOfDemo } from "./places.ts";

interface Way {
  readonly name: string;
  readonly width: number;
  readonly language?: string;
  readonly style?: string;
}

const ways: readonly Way[] = [
  { name: "at 320 px", width: 320 },
  { name: "longer words at 390 px", width: 390, language: "xl" },
  { name: "from right to left at 1280 px", width: 1280, language: "xr" },
  { name: "from right to left at 390 px", width: 390, language: "xr" },
  { name: "twice the type at 1280 px", width: 1280, style: "html { font-size: 200% }" },
  { name: "twice the type at 390 px", width: 390, style: "html { font-size: 200% }" },
  { name: "longer words at 320 px", width: 320, language: "xl" },
  {
    name: "wide spacing at 390 px",
    width: 390,
    style:
      "* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important } p { margin-block-end: 2em !important }",
  },
];

for (const way of ways)
  describe(way.name, () => {
    const opened: Partial<Record<"demo" | "empty", OpenedPage>> = {};
    afterAll(async () => {
      await Promise.all(Object.values(opened).map((o) => o.close()));
    });
    for (const [which, open, places] of [
      ["demo", withDemo, placesOfDemo],
      ["empty", openPage, placesBefore],
    ] as const)
      for (const [name, hash] of places)
        browserTest(`${name} fits`, async () => {
          opened[which] ??= await open({ width: way.width, ...(way.language ? { language: way.language } : {}) });
          const { page } = opened[which];
          await goTo(page, hash);
          await page.waitForTimeout(100);
          if (way.style) await page.addStyleTag({ content: way.style });
          expect(await outside(page)).toEqual([]);
          expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
        });
  });

/** What stands beyond an edge of the window, or is wider inside than the box that cuts it off. */
function outside(page: OpenedPage["page"]): Promise<string[]> {
  return page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    const told: string[] = [];
    const room = document.documentElement.scrollWidth;
    if (room > width) told.push(`the page is ${room} px wide in a window of ${width}`);
    for (const element of document.querySelectorAll<HTMLElement>("body *")) {
      if (element.closest(".unseen, .skip, svg, .timetable, iframe, [hidden]")) continue;
      const style = getComputedStyle(element);
      const box = element.getBoundingClientRect();
      if (box.width === 0 || box.height === 0) continue;
      const says = `${element.tagName}.${element.className} “${element.textContent?.trim().slice(0, 30)}”`;
      if (box.right > width + 1 || box.left < -1) told.push(`${says} from ${Math.round(box.left)} to ${Math.round(box.right)}`);
      // A field scrolls what it holds, a paper is drawn smaller than it is, what is for listeners only is cut on purpose.
      const isMeant = element.matches("input, textarea, select, .preview") || style.clipPath !== "none";
      const cuts = !isMeant && (style.overflowX === "hidden" || style.overflowX === "clip");
      if (cuts && element.scrollWidth > element.clientWidth + 1) told.push(`${says} is cut off`);
    }
    return told.slice(0, 8);
  });
}
