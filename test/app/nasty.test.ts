// Whatever a person types or pastes is text: script, markup, formulas and direction marks go through every text field of the
// lists, and are shown as typed or refused with words. Nothing runs, nothing is fetched, the page stays alive.
//
// 50 strings in `npm test`, 500 in the long run; seeds are fixed.
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect } from "vitest";
import { sample } from "../sample.ts";
import { soon } from "./hands.ts";
import { browserTest, goTo, type OpenedPage, withDemo } from "./harness.ts";
import { nastyStrings } from "./nastyStrings.ts";

const strings = nastyStrings(sample(50, 500));

/** A name as it may be kept: on one line, without what cannot be seen at its ends or turns it round (UAX 9), in one spelling. */
const tidy = (text: string) =>
  text
    .replace(/[\t\n\r\v\f\u0085\u2028\u2029]+/g, " ")
    .replace(/[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, "")
    .replace(/[\u0000-\u001f\u007f-\u009f]/g, "")
    .replace(/[\ud800-\udfff]/gu, "\ufffd")
    .normalize("NFC")
    .trim();

/** A field of one line loses its breaks when something is put in (HTML standard, value sanitization). */
const asTyped = (text: string) => text.replace(/[\r\n]/g, "").replace(/[\ud800-\udfff]/gu, "\ufffd");

interface NastyField {
  readonly place: string;
  readonly name: string;
  readonly field: (page: Page) => ReturnType<Page["locator"]>;
  /** What has to be opened first. */
  readonly open?: (page: Page) => Promise<void>;
  /** Kept as a name, kept as a text, emptied after it was taken, only looked at, or no figure and so refused. */
  readonly kind: "name" | "text" | "taken" | "looked at" | "figure";
}

const box = (name: string | RegExp) => (page: Page) =>
  page.getByRole("textbox", typeof name === "string" ? { name, exact: true } : { name }).first();
const press = (name: string) => async (page: Page) => {
  await page.getByRole("button", { name }).first().click();
};
const unfold = (words: string) => async (page: Page) => {
  const summary = page.locator("details:not([open]) > summary", { hasText: words }).first();
  if ((await summary.count()) > 0) await summary.click();
};

const inside =
  (place: string, kind: NastyField["kind"], open?: NastyField["open"]) =>
  (name: string, field: NastyField["field"] = box(name)) =>
    ({ place, kind, name, field, ...(open ? { open } : {}) }) satisfies NastyField;

const offers = unfold("look and change");
const fields: readonly NastyField[] = [
  inside("#/pupils", "name")("name of a pupil", (page) => page.locator("table.pupils th input").first()),
  inside("#/pupils", "name")("name of a class", (page) => page.locator(".one-class input").first()),
  inside("#/pupils", "taken")("One more pupil"),
  inside("#/pupils", "looked at", press("Paste a list, or open a table"))("Your list"),
  inside("#/cupboard", "looked at")("Search the cupboard"),
  inside("#/cupboard", "figure")("How many of them"),
  inside("#/cupboard", "figure")("LEDs, green, box 1, a2: how many are here"),
  inside("#/cupboard", "looked at", press("What happened? buttons"))("How many?"),
  inside(
    "#/cupboard",
    "looked at",
    unfold("Add a thing"),
  )("box, if it has one", (page) => page.getByLabel("box, if it has one").first()),
  inside("#/cupboard", "text")("board-01: note"),
  inside("#/cupboard", "figure")("board-02: dead pins"),
  inside("#/cupboard", "figure")("How many boards in all?"),
  inside("#/cupboard", "text")("laptop-01: note"),
  inside("#/cupboard", "figure")("laptop-01: minutes on its battery"),
  inside("#/cupboard", "figure")("laptop-01: mA that a port gives"),
  inside("#/cupboard", "figure")("laptop-01: USB ports"),
  inside("#/cupboard", "figure")("power banks, box 4: how many are here"),
  inside("#/cupboard", "looked at", unfold("Add a power cut"))("from"),
  inside("#/cupboard", "looked at", unfold("Add a power cut"))("day"),
  inside("#/order", "figure")("What may it cost, in EUR?"),
  inside("#/order", "name", offers)("name"),
  inside("#/order", "figure", offers)("days until it comes"),
  inside("#/order", "figure", offers)("shipping, in EUR"),
  inside("#/order", "figure", offers)("sent free from, in EUR"),
  inside("#/order", "figure", offers)("servos: how many in a packet"),
  inside("#/order", "figure", offers)("servos: price of a packet"),
  inside("#/order", "figure", offers)("servos: packets to be had; empty means any number"),
  inside("#/order", "looked at", unfold("Add an offer"))("price of a packet, in EUR"),
  inside("#/order", "taken")("One more supplier"),
];

describe("nasty strings", () => {
  let opened: OpenedPage;
  const dialogs: string[] = [];
  beforeAll(async () => {
    opened = await withDemo({ hash: "#/pupils" });
    opened.page.setDefaultTimeout(8000);
    opened.page.on("dialog", (dialog) => {
      dialogs.push(dialog.message());
      void dialog.dismiss();
    });
  });
  afterAll(async () => {
    await opened?.close();
  });
  /** Nothing ran, nothing was asked for, and the page's own frame stands. */
  const isUnharmed = async () => {
    const state = await opened.page.evaluate(() => ({
      ran: (window as { nastyRan?: unknown }).nastyRan ?? null,
      // Elements that only a string could have brought.
      brought: document.querySelectorAll(
        "main :is(script, iframe, img, link, style, base, meta, object, embed, math, b[onclick])",
      ).length,
      places: document.querySelectorAll("nav a").length,
    }));
    expect(state).toEqual({ ran: null, brought: 0, places: 6 });
    expect(dialogs).toEqual([]);
    expect(opened.faults).toEqual([]);
  };

  /** All strings into a field without leaving the page: thirty fields by keys alone would take minutes. */
  const throughAtOnce = (here: ReturnType<Page["locator"]>) =>
    here.evaluate(async (el, texts) => {
      const input = el as HTMLInputElement | HTMLTextAreaElement;
      const put = Object.getOwnPropertyDescriptor(Object.getPrototypeOf(input), "value")?.set;
      const out: { value: string; problems: number }[] = [];
      const settled = () => new Promise((go) => setTimeout(go, 2));
      for (const text of texts) {
        input.focus();
        put?.call(input, text);
        input.dispatchEvent(new Event("input", { bubbles: true }));
        input.dispatchEvent(new Event("change", { bubbles: true }));
        await settled();
        out.push({ value: input.value, problems: document.querySelectorAll(".problem").length });
        input.dispatchEvent(new KeyboardEvent("keydown", { key: "Escape", bubbles: true }));
        await settled();
      }
      return out;
    }, strings);

  for (const { place, name, field, open, kind } of fields)
    browserTest(
      `${strings.length} strings through ${name}`,
      async () => {
        const { page } = opened;
        if (!page.url().endsWith(place)) await goTo(page, place);
        await open?.(page);
        const here = field(page);
        const wrong: string[] = [];
        if (kind === "figure" || kind === "looked at") {
          const shown = await throughAtOnce(here);
          strings.forEach((text, n) => {
            const { value, problems } = shown[n]!;
            // What holds a figure by chance may be taken.
            const isRight = kind === "looked at" || problems > 0 ? value === asTyped(text) : /^[\d.,DA ]*$/.test(value);
            if (!isRight) wrong.push(JSON.stringify({ text, value, problems }));
          });
        } else
          for (const text of strings) {
            await here.fill(text);
            await here.press("Enter");
            const seen = async () => {
              const value = await here.inputValue();
              const isRefused = (await page.locator(".problem").count()) > 0;
              const stays = isRefused && value === asTyped(text);
              const isRight: Record<"name" | "text" | "taken", boolean> = {
                name: stays || value === tidy(text),
                text: stays || tidy(value) === tidy(text),
                taken: stays || value === "",
              };
              return isRight[kind] ? null : JSON.stringify({ text, value, isRefused });
            };
            // The page draws in its own time.
            let found = await seen();
            for (let n = 0; n < 40 && found !== null; n += 1) {
              await page.waitForTimeout(25);
              found = await seen();
            }
            if (found !== null) wrong.push(found);
          }
        if (kind === "looked at") await here.fill("");
        expect(wrong).toEqual([]);
        await isUnharmed();
      },
      sample(60_000, 600_000),
    );

  browserTest(
    "all strings as one pasted list",
    async () => {
      const { page } = opened;
      for (const [place, text] of [
        ["#/pupils", `name\n${strings.map((s) => s.replace(/[\r\n]/g, "")).join("\n")}`],
        ["#/cupboard", `item,count,box\n${strings.map((s) => `${s},1,${s}`).join("\n")}`],
      ] as const) {
        await goTo(page, place);
        await page.getByRole("button", { name: "Paste a list, or open a table" }).click();
        await page.getByRole("textbox", { name: "Your list" }).fill(text);
        await page.getByRole("button", { name: "Look at what is understood" }).click();
        await soon(() => page.locator(".understood").count()).toBe(1);
        await isUnharmed();
      }
    },
    sample(60_000, 600_000),
  );

  browserTest("what was kept is the same text after the page was opened anew", async () => {
    const { page } = opened;
    await goTo(page, "#/pupils");
    const names = () =>
      page.locator("table.pupils th input").evaluateAll((all) => all.map((el) => (el as HTMLInputElement).value));
    const before = await names();
    // The demo's thirty and one for each string that was taken as a name.
    expect(before.length).toBeGreaterThan(30);
    expect(before.every((name) => name === tidy(name) && name !== "")).toBe(true);
    await soon(async () => (await page.locator("footer.block").textContent())?.includes("on this computer")).toBe(true);
    await page.reload();
    await page.locator("footer.block").waitFor();
    if (!(await page.locator("table.pupils").count())) await goTo(page, "#/pupils");
    await soon(names).toEqual(before);
    await isUnharmed();
  });
});
