// How every place looks to those who see otherwise: contrast, colours of their own, no motion, and on paper from the browser's menu.
//
// Contrast by WCAG 2.2, 1.4.6 (7:1 for text, 4.5:1 for large) and 1.4.11 (3:1 for what is drawn and pressed); luminance by its formula.
import { afterAll, describe, expect } from "vitest";
import { browserTest, goTo, type OpenedPage, openPage, withDemo } from "./harness.ts";
import { placesBefore, placesOfDemo } from "./places.ts";

type Page = OpenedPage["page"];

/** Texts that are seen and do not stand out enough from what is behind them: "colour on colour, ratio, words". */
function faintTexts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const parts = (colour: string) => (/^rgba?\(/.test(colour) ? (colour.match(/[\d.]+/g) ?? []).map(Number) : [0, 0, 0, 0]);
    const luminance = (colour: string) => {
      const [r = 0, g = 0, b = 0] = parts(colour).map((c) =>
        c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4,
      );
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const ratio = (a: string, b: string) => {
      const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
      return (light + 0.05) / (dark + 0.05);
    };
    const behind = (element: Element | null): string => {
      for (let at = element; at; at = at.parentElement) {
        const { backgroundColor } = getComputedStyle(at);
        if ((parts(backgroundColor)[3] ?? 1) > 0) return backgroundColor;
      }
      return "rgb(255, 255, 255)";
    };
    const out = new Set<string>();
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const element = node.parentElement;
      if (!element || !node.textContent?.trim() || element.closest("script, style, noscript, .unseen, .skip, [hidden]")) continue;
      if (!element.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue;
      const style = getComputedStyle(element);
      const colour = element.closest("svg") && style.fill !== "none" ? style.fill : style.color;
      const size = Number.parseFloat(style.fontSize);
      const least = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700) ? 4.5 : 7;
      const found = ratio(colour, behind(element));
      if (found < least) out.add(`${colour} on ${behind(element)}, ${found.toFixed(2)}: ${node.textContent.trim().slice(0, 40)}`);
    }
    return [...out];
  });
}

/** What is drawn or pressed and cannot be told from the page, where the colours are the reader's own. */
function lostLines(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const probe = document.createElement("i");
    probe.style.cssText = "color: CanvasText; background-color: Canvas; forced-color-adjust: none";
    document.body.append(probe);
    const { color: ink, backgroundColor: paper } = getComputedStyle(probe);
    probe.remove();
    if (ink === paper) return ["the colours were not forced"];
    const same = (a: string, b: string) =>
      (a.match(/[\d.]+/g) ?? []).slice(0, 3).join() === (b.match(/[\d.]+/g) ?? []).slice(0, 3).join();
    const ownBlack = "rgb(17, 17, 17)";
    const out = new Set<string>();
    for (const shape of document.querySelectorAll("main svg :is(path, line, rect, circle, polyline, polygon)")) {
      if (!shape.checkVisibility() || shape.closest("figure.paper")) continue;
      const { stroke, fill } = getComputedStyle(shape);
      const seen = [stroke, fill].filter((c) => c !== "none" && !/, 0\)$/.test(c));
      if (seen.length === 0) continue;
      if (seen.every((c) => same(c, paper) || (c === ownBlack && !same(ink, ownBlack))))
        out.add(`svg ${shape.outerHTML.slice(0, 60)} ${seen}`);
    }
    for (const row of document.querySelectorAll(".typed > .is")) {
      for (const part of ["::before", "::after"]) {
        const style = getComputedStyle(row, part);
        if (style.content === "none" || style.display === "none") continue;
        const drawn = [style.backgroundColor, style.borderInlineStartColor, style.backgroundImage].join(" ");
        if (drawn.includes("17, 17, 17") && !same(ink, ownBlack))
          out.add(`${row.parentElement?.className}${part} ${drawn.slice(0, 80)}`);
      }
    }
    return [...out];
  });
}

/** What moves by itself or glides. */
function moving(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll("body *")].flatMap((element) => {
      const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(element);
      const glides = transitionDuration.split(",").some((t) => Number.parseFloat(t) > 0);
      return animationName !== "none" || glides || scrollBehavior === "smooth" ? [`${element.tagName}.${element.className}`] : [];
    }),
  );
}

/** What is of no use on paper and would be printed all the same. A choice shows what was chosen; a line's number is text. */
function uselessOnPaper(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        "button:not(.n), input[type=file], textarea, nav, .skip, .progress, footer select",
      ),
    ]
      .filter((e) => e.checkVisibility() && e.getBoundingClientRect().height > 1 && !e.closest(".unseen"))
      .map((e) => `${e.tagName}.${e.className} ${e.textContent?.slice(0, 30)}`),
  );
}

describe.each([
  ["demo", withDemo, placesOfDemo],
  ["no class", openPage, placesBefore],
] as const)("%s", (_, open, places) => {
  const opened: OpenedPage[] = [];
  const take = async (): Promise<OpenedPage> => {
    if (opened.length === 0) opened.push(await open({ width: 1280 }));
    return opened[0]!;
  };
  afterAll(() => Promise.all(opened.map((o) => o.close())));
  for (const [name, hash] of places)
    browserTest(`${name}: contrast, forced colours, no motion, paper`, async () => {
      const { page } = await take();
      await goTo(page, hash);
      await page.waitForTimeout(100);
      expect(await faintTexts(page)).toEqual([]);
      for (const colorScheme of ["light", "dark"] as const) {
        await page.emulateMedia({ forcedColors: "active", colorScheme });
        expect(await lostLines(page), colorScheme).toEqual([]);
      }
      await page.emulateMedia({ forcedColors: "none", colorScheme: "light", reducedMotion: "reduce" });
      expect(await moving(page)).toEqual([]);
      await page.emulateMedia({ reducedMotion: "no-preference", media: "print" });
      expect(await uselessOnPaper(page)).toEqual([]);
      await page.emulateMedia({ media: "screen" });
    });
});
