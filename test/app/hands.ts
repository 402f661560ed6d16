// Two pairs of hands for tests of screens: one has only a keyboard, the other only a finger. Both name things as a person would.
//
// The keyboard walks with Tab from where the focus is, so that what cannot be reached by keys fails the test; the finger taps at
// the middle of what it sees, and its taps are counted.
// Does not know: which screens there are.
import type { Locator, Page } from "playwright-core";
import { expect } from "vitest";

export interface Hands {
  /** Presses a button, a link, a summary, or ticks a box or a round mark, by its name. */
  press(name: string | RegExp): Promise<void>;
  /** Writes over what stands in a field, then Enter. */
  write(name: string | RegExp, text: string): Promise<void>;
  /** Writes into a field of several lines; nothing is pressed. */
  paste(name: string | RegExp, text: string): Promise<void>;
  /** Chooses from a list that opens. */
  choose(name: string | RegExp, label: string): Promise<void>;
  /** Taps or keys that pressed something since the beginning. */
  readonly taps: () => number;
}

/** What is to hold before long: an answer may have to wait for the plan that is being made, or for the solver. */
export const soon = <Value>(what: () => Value | Promise<Value>) => expect.poll(what, { timeout: 20_000 });

/** What a listener is told about the element that has the focus. */
async function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    const el = document.activeElement;
    if (!(el instanceof HTMLElement) || el === document.body) return "";
    const labels = "labels" in el ? [...((el as HTMLInputElement).labels ?? [])] : [];
    const text = el.getAttribute("aria-label") ?? (labels.map((label) => label.textContent).join(" ") || el.textContent);
    return (text ?? "").replace(/\s+/g, " ").trim();
  });
}

const isMeant = (name: string, wanted: string | RegExp) => (typeof wanted === "string" ? name === wanted : wanted.test(name));

/** More than any place has. */
const mostStops = 900;

export function keyboard(page: Page): Hands {
  let taps = 0;
  const goTo = async (wanted: string | RegExp): Promise<void> => {
    const passed: string[] = [];
    for (let n = 0; n < mostStops; n += 1) {
      const name = await focusedName(page);
      if (isMeant(name, wanted)) return;
      passed.push(name);
      await page.keyboard.press("Tab");
    }
    throw new Error(`Tab never comes to ${wanted}; it passed ${[...new Set(passed)].join(" | ")}`);
  };
  return {
    async press(name) {
      await goTo(name);
      const isBox = await page.evaluate(() => (document.activeElement as HTMLInputElement | null)?.type === "checkbox");
      const isMark = await page.evaluate(() => (document.activeElement as HTMLInputElement | null)?.type === "radio");
      await page.keyboard.press(isBox || isMark ? "Space" : "Enter");
      taps += 1;
    },
    async write(name, text) {
      await goTo(name);
      await page.keyboard.press("Control+A");
      await page.keyboard.insertText(text);
      if (text === "") await page.keyboard.press("Delete");
      await page.keyboard.press("Enter");
    },
    async paste(name, text) {
      await goTo(name);
      await page.keyboard.press("Control+A");
      await page.keyboard.insertText(text);
    },
    async choose(name, label) {
      await goTo(name);
      await page.keyboard.type(label);
    },
    taps: () => taps,
  };
}

export async function finger(page: Page): Promise<Hands> {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Emulation.setTouchEmulationEnabled", { enabled: true, maxTouchPoints: 1 });
  let taps = 0;
  const tap = async (what: Locator): Promise<void> => {
    // Waits until it stands still and nothing lies over it, without pressing.
    await what.click({ trial: true });
    const box = await what.boundingBox();
    if (box === null) throw new Error(`nothing to tap: ${what}`);
    const touchPoints = [{ x: box.x + Math.min(box.width / 2, 40), y: box.y + box.height / 2 }];
    await devtools.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints });
    await devtools.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
    taps += 1;
  };
  const named = (name: string | RegExp): Locator => {
    const exact = typeof name === "string";
    const options = { name, exact };
    return page
      .getByRole("button", options)
      .or(page.getByRole("link", options))
      .or(page.getByRole("checkbox", options))
      .or(page.getByRole("radio", options))
      .or(page.locator("summary").filter({ hasText: name }))
      .and(page.locator(":visible"))
      .first();
  };
  const field = (name: string | RegExp) => page.getByRole("textbox", { name, exact: typeof name === "string" }).first();
  /** A tap into a field counts as typing. */
  const enter = async (name: string | RegExp): Promise<void> => {
    await field(name).waitFor();
    await tap(field(name));
    taps -= 1;
    await soon(() => field(name).evaluate((el) => el === document.activeElement)).toBe(true);
  };
  return {
    async press(name) {
      await named(name).waitFor();
      await tap(named(name));
    },
    async write(name, text) {
      await enter(name);
      await field(name).selectText();
      await page.keyboard.insertText(text);
      if (text === "") await page.keyboard.press("Delete");
      await page.keyboard.press("Enter");
    },
    async paste(name, text) {
      await enter(name);
      await field(name).selectText();
      await page.keyboard.insertText(text);
    },
    async choose(name, label) {
      // The list of a phone is drawn by the phone itself, where no test reaches.
      await page
        .getByRole("combobox", { name, exact: typeof name === "string" })
        .first()
        .selectOption({ label });
    },
    taps: () => taps,
  };
}

/** Both pairs of hands with the window that each is tried in. */
export const ways = [
  ["keyboard, 1280 pixels", { width: 1280 }, keyboard],
  ["finger, 390 pixels", { width: 390 }, finger],
] as const;
