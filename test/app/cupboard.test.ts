// The cupboard in a real browser: each act once with the keyboard alone at 1280 pixels and once with a finger at 390.
//
// Figures follow from the demo (demo/harbour.json, kits/*.yaml): six basic kits and four plain ones.
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect } from "vitest";
import { type Hands, soon, ways } from "./hands.ts";
import { accessibilityFaults, browserTest, type OpenedPage, withDemo } from "./harness.ts";

for (const [name, size, make] of ways)
  describe(name, () => {
    let opened: OpenedPage;
    let hands: Hands;
    const isPhone = size.width < 500;
    beforeAll(async () => {
      opened = await withDemo({ ...size, hash: "#/cupboard" });
      opened.page.setDefaultTimeout(6000);
      hands = await make(opened.page);
    });
    afterAll(async () => {
      await opened?.close();
    });
    /** The row of a thing as text, its fields with what stands in them. */
    const row = (thing: string, n = 0) =>
      opened.page
        .locator("tr", { has: opened.page.getByRole("rowheader", { name: thing, exact: true }) })
        .nth(n)
        .evaluate((tr) =>
          [...tr.querySelectorAll("td")]
            .map((td) => td.querySelector("input")?.value ?? td.textContent?.trim() ?? "")
            .slice(0, 3)
            .join(" "),
        );
    const says = () => opened.page.locator("main .says").first().textContent();
    const undo = async () => {
      await hands.press("Undo");
      await soon(says).toContain("Taken back");
    };

    browserTest("what is short stands first, by the day", async () => {
      const days = await opened.page.locator(".bench:has(h3) > .at b").allTextContents();
      expect(days.slice(0, 2)).toEqual(["10 Feb", "3 Mar"]);
      const text = await opened.page.locator("main").textContent();
      for (const part of ["3 photoresistors", "The quay lamp at dusk", "4 mains adapters", "2 batteries"])
        expect(text).toContain(part);
    });

    browserTest("a box is counted anew where its count stands, and the undo takes it back", async () => {
      // The kits' and the loose ones, less those lost.
      const before = await row("LEDs, red");
      expect(before.split(" ")[0]).toBe("12");
      await hands.write("LEDs, red, box 1, a1: how many are here", "15");
      await soon(() => row("LEDs, red")).toBe(`15 ${Number(before.split(" ")[1]) + 3} ${before.split(" ")[2]}`);
      expect(await says()).toContain("15");
      await undo();
      await soon(() => row("LEDs, red")).toBe(before);
    });

    browserTest("what is no count stays as typed and says what helps", async () => {
      await hands.write("LEDs, green, box 1, a2: how many are here", "many");
      await soon(() => opened.page.locator(".problem").first().textContent()).toContain("many");
      await opened.page.keyboard.press("Escape");
      await soon(() => opened.page.locator(".problem").count()).toBe(0);
      expect((await row("LEDs, green")).split(" ")[0]).toBe("4");
    });

    browserTest("lost, broken, found, lent, back and bought are one tap each", async () => {
      const inAll = async () => Number((await row("buttons")).split(" ")[1]);
      const before = await inAll();
      await hands.press("What happened? buttons");
      await hands.write("How many?", "2");
      for (const [act, change] of [
        ["Lost", -2],
        ["Broken", -2],
        ["Found", 2],
        ["Lent", -2],
        ["Came back", 2],
        ["Bought", 2],
      ] as const) {
        const taps = hands.taps();
        await hands.press(act);
        await soon(inAll).toBe(before + change);
        expect(hands.taps() - taps).toBe(1);
        await undo();
        await soon(inAll).toBe(before);
      }
      await hands.press("Close: buttons");
    });

    browserTest("a thing is added by kind and value in words", async () => {
      await hands.press("Add a thing");
      await hands.choose("What is it?", "resistor");
      await hands.write("value, in Ω", "4,7 k");
      await soon(() => opened.page.getByRole("rowheader", { name: "resistors, 4.7 kΩ" }).count()).toBe(1);
      await undo();
      await soon(() => opened.page.getByRole("rowheader", { name: "resistors, 4.7 kΩ" }).count()).toBe(0);
      await hands.write("value, in Ω", "many");
      await soon(() => opened.page.locator("form .problem").first().textContent()).toContain("many");
    });

    browserTest("a kit is counted", async () => {
      const heading = opened.page.getByRole("heading", { name: "Harbour kit, basic" });
      const kits = () => opened.page.locator(".bench").filter({ has: heading }).locator(".at").textContent();
      await hands.write("How many of them", "7");
      await soon(kits).toBe("7");
      await undo();
      await soon(kits).toBe("6");
    });

    browserTest("a pasted list is looked at, mended and taken", async () => {
      await hands.press("Paste a list, or open a table");
      await hands.paste("Your list", "item;count;box\nbutton;9;shelf\nresitor 220;5;\nled red;2;shelf\n");
      await hands.press("Look at what is understood");
      await soon(() => opened.page.locator(".understood").textContent()).toContain("line 3");
      expect(await opened.page.locator(".understood").textContent()).toContain("resistor");
      expect(await opened.page.getByRole("button", { name: "Count it on top" }).count()).toBe(0);
      await hands.press("Leave this line out");
      await soon(() => opened.page.locator(".understood h2").textContent()).toBe("2 lines are understood");
      await hands.press("Count it on top");
      await soon(() => row("buttons", 1)).toMatch(/^9 /);
      await undo();
      await soon(() => opened.page.getByRole("rowheader", { name: "buttons", exact: true }).count()).toBe(1);
    });

    browserTest("boards: does it work, which pins are dead", async () => {
      if (isPhone) await hands.press("Look and change");
      const at = () => opened.page.locator(".bench:has(input[aria-label='x'], th:has-text('board-01')) > .at").textContent();
      expect(await at()).toBe("10 of 11");
      await hands.press("board-02 works");
      await soon(at).toBe("9 of 11");
      await undo();
      await soon(at).toBe("10 of 11");
      await hands.write("board-03: dead pins", "a0 5");
      await soon(() => opened.page.getByRole("textbox", { name: "board-03: dead pins" }).inputValue()).toBe("D5 A0");
      await undo();
      await soon(() => opened.page.getByRole("textbox", { name: "board-03: dead pins" }).inputValue()).toBe("");
      await hands.write("How many boards in all?", "13");
      await soon(at).toBe("12 of 13");
      await undo();
      await soon(at).toBe("10 of 11");
    });

    browserTest("computers: battery, ports", async () => {
      // The lists above are closed on a phone; the first still closed one is that of the cables, then the computers'.
      if (isPhone)
        for (const _ of [1, 2])
          await opened.page.locator("details:not([open]) > summary", { hasText: "Look and change" }).first().click();
      await hands.write("laptop-04: minutes on its battery", "200");
      await soon(says).toMatch(/laptop-04/);
      await undo();
      await hands.write("laptop-04: mA that a port gives", "900");
      await soon(says).toMatch(/laptop-04/);
      await undo();
      await hands.write("laptop-06: minutes on its battery", "long");
      await soon(() => opened.page.locator("td .problem").first().textContent()).toContain("long");
      await opened.page.keyboard.press("Escape");
    });

    browserTest("supplies are added, counted and removed", async () => {
      await hands.press("Add a supply");
      const form = opened.page.locator("details[open] form").last();
      await form.getByRole("combobox", { name: "What is it?" }).selectOption({ label: "mains adapter" });
      await form.getByRole("textbox", { name: "value, in A" }).fill("2000");
      await form.getByRole("textbox", { name: "value, in A" }).press("Enter");
      await soon(() => opened.page.getByRole("rowheader", { name: "mains adapters, 2 A" }).count()).toBe(1);
      await hands.press("Remove mains adapters, 2 A");
      await soon(() => opened.page.getByRole("rowheader", { name: "mains adapters, 2 A" }).count()).toBe(0);
    });

    browserTest("a power cut is added and removed", async () => {
      await hands.press("Add a power cut");
      await hands.paste("day", "12");
      await hands.choose("month", "March");
      await hands.paste("year", "2027");
      await hands.paste("from", "11:00");
      await hands.write("to", "10:00");
      await soon(() => opened.page.locator("form .problem").last().textContent()).toContain("before it begins");
      await hands.write("to", "12.30");
      await soon(() => opened.page.locator("main").textContent()).toContain("Friday 12 March");
      await hands.press(/Remove the power cut of Friday 12 March/);
      await soon(() => opened.page.locator("main").textContent()).not.toContain("Friday 12 March");
    });

    browserTest("the search keeps what is asked for", async () => {
      await hands.paste("Search the cupboard", "box 1 LED");
      await soon(() => opened.page.locator("tbody th").allTextContents()).toEqual(["LEDs, red", "LEDs, green"]);
      await hands.paste("Search the cupboard", " ");
      await soon(() => opened.page.locator("tbody th").count()).toBeGreaterThan(10);
    });

    browserTest("the stock is saved as a table and comes back the same", async () => {
      const saved = opened.page.waitForEvent("download");
      await hands.press("Save the stock as a table");
      const text = readFileSync((await (await saved).path()) ?? "", "utf8");
      expect(text).toMatch(/^\ufeffitem,count,box\r\n/);
      expect(text).toContain('led red,12,"box 1, a1"\r\n');
      const counts = () =>
        opened.page.locator("table.stock input").evaluateAll((all) => all.map((el) => (el as HTMLInputElement).value));
      const before = await counts();
      await hands.press("Paste a list, or open a table");
      await opened.page
        .locator("input[type=file]")
        .setInputFiles({ name: "stock.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
      await hands.press("Take it as the whole loose stock");
      await soon(() => opened.page.locator(".table-box").count()).toBe(0);
      expect(await counts()).toEqual(before);
    });

    browserTest("nothing asked for the network, nothing failed, and axe finds nothing", async () => {
      expect(opened.faults).toEqual([]);
      expect(await accessibilityFaults(opened.page)).toEqual([]);
      const { wide, window } = await opened.page.evaluate(() => ({
        wide: document.documentElement.scrollWidth,
        window: document.documentElement.clientWidth,
      }));
      expect(wide).toBeLessThanOrEqual(window);
    });
  });

const encodings: [name: string, bytes: Buffer][] = [
  ["semicolons, UTF-8 with its mark", Buffer.from("\ufeffitem;count;box\r\nbutton;3;étagère\r\n")],
  ["tabs", Buffer.from("item\tcount\tbox\nbutton\t3\tétagère\n")],
  [
    "UTF-16 as spreadsheets write it",
    Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from("item\tcount\tbox\r\nbutton\t3\tétagère\r\n", "utf16le")]),
  ],
  ["the old Western code page", Buffer.from("item,count,box\r\nbutton,3,étagère\r\n", "latin1")],
];
describe("tables from a file", () => {
  let opened: OpenedPage;
  beforeAll(async () => {
    opened = await withDemo({ hash: "#/cupboard" });
    await opened.page.getByRole("button", { name: "Paste a list, or open a table" }).click();
  });
  afterAll(async () => {
    await opened?.close();
  });
  for (const [name, buffer] of encodings)
    browserTest(`${name}: understood before it is taken`, async () => {
      await opened.page.locator("input[type=file]").setInputFiles({ name: "stock.csv", mimeType: "text/csv", buffer });
      await soon(() => opened.page.locator(".understood tbody").textContent()).toMatch(/buttons?3étagère/);
      await opened.page.getByRole("textbox", { name: "Your list" }).fill("");
    });
});
