// The order's place in a real browser: each act once with the keyboard alone at 1280 pixels and once with a finger at 390.
//
// The order of the demo is that of `benchday order demo/harbour.json` (test/answers.test.ts holds it); here it is shown.
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect } from "vitest";
import { type Hands, soon, ways } from "./hands.ts";
import { accessibilityFaults, browserTest, type OpenedPage, withDemo } from "./harness.ts";

for (const [name, size, make] of ways)
  describe(name, () => {
    let opened: OpenedPage;
    let hands: Hands;
    beforeAll(async () => {
      opened = await withDemo(size);
      opened.page.setDefaultTimeout(8000);
      hands = await make(opened.page);
    });
    afterAll(async () => {
      await opened?.close();
    });
    const main = async () => (await opened.page.locator("main").textContent()) ?? "";
    const undo = () => hands.press("Undo");
    const answered = () => soon(main).toContain("This is proven.");

    browserTest("what must be ordered by when, as a table: two taps from Today", async () => {
      const saved = opened.page.waitForEvent("download", { timeout: 40_000 });
      const taps = hands.taps();
      await hands.press("Order");
      expect(await main()).not.toContain("proven");
      await hands.press("Save the order as a table");
      expect(hands.taps() - taps).toBeLessThanOrEqual(2);
      const text = readFileSync((await (await saved).path()) ?? "", "utf8");
      expect(text).toMatch(/^\ufeffsupplier,offer,packets,contains,each,price,cost,currency,order by\r\n/);
      expect(text).toContain("pier-supplies,photoresistor-5,1,photoresistor,5,2.50,2.50,EUR,2027-02-10\r\n");
    });

    browserTest("the sum, how sure it is, the budget, each line with its reasons, and what cannot be held", async () => {
      await answered();
      const text = await main();
      for (const part of [
        "€53.20",
        "No cheaper order does the same",
        "Budget: €150.00. Left: €96.80.",
        "Pier Supplies (invented): order by 20 January",
        "The quay lamp at dusk, Class 7b, 16 February: 3 missing",
        "The barrier, Class 7c, 11 March: cannot be held",
        "batteries, 9 V block",
      ])
        expect(text).toContain(part);
      // The lines and the shipping add up to the sum.
      const sums = await opened.page.locator(".order-lines tbody td:nth-last-child(2)").allTextContents();
      const shipping = await opened.page.locator(".order-lines tfoot tr:first-child td.num").allTextContents();
      const cents = [...sums, ...shipping].reduce((sum, cell) => sum + Math.round(Number(cell) * 100), 0);
      expect(cents).toBe(5320);
      expect(await opened.page.locator("tbody td.num", { hasText: "%" }).count()).toBe(7);
    });

    browserTest("what has come is in the cupboard by one tap, and undo takes it back", async () => {
      const taps = hands.taps();
      await hands.press("It has come: 5 photoresistors");
      expect(hands.taps() - taps).toBe(1);
      await soon(main).toContain("in the cupboard");
      await soon(main).toContain("as it was before your last change");
      await undo();
      await hands.press("Work out the order again");
      await soon(main).not.toContain("as it was before");
      await answered();
    });

    browserTest("budget and chance; a sum with comma or point, and what is none", async () => {
      await hands.write("What may it cost, in EUR?", "40,50");
      await soon(() => opened.page.getByRole("textbox", { name: "What may it cost, in EUR?" }).inputValue()).toBe("40.50");
      await hands.press("Work out the order again");
      await soon(main).toContain("The budget does not reach");
      expect(await main()).toMatch(/The next sum: with €[\d.]+/);
      await undo();
      await hands.write("What may it cost, in EUR?", "1.234");
      await soon(() => opened.page.locator(".problem").first().textContent()).toContain("12.50");
      await opened.page.keyboard.press("Escape");
      await opened.page.getByRole("radio", { name: "99 %" }).check();
      await soon(() => opened.page.getByRole("radio", { name: "99 %" }).isChecked()).toBe(true);
      await undo();
    });

    browserTest("suppliers and offers are changed, added and removed", async () => {
      await hands.press("13 offers: look and change");
      await hands.write("days until it comes", "9");
      await soon(main).toContain("9 days");
      await undo();
      await hands.write("photoresistors: price of a packet", "2,75");
      await soon(() => opened.page.getByRole("textbox", { name: "photoresistors: price of a packet" }).first().inputValue()).toBe(
        "2.75",
      );
      await undo();
      await hands.press("Add an offer");
      await hands.choose("What is it?", "resistor");
      await hands.paste("value, in Ω", "330");
      await hands.paste("how many in a packet", "50");
      await hands.write("price of a packet, in EUR", "1,95");
      await soon(() => opened.page.getByText("resistor-330-50").count()).toBe(1);
      await undo();
      await soon(() => opened.page.getByText("resistor-330-50").count()).toBe(0);
      await hands.write("One more supplier", "Corner Shop");
      await soon(() => opened.page.getByRole("heading", { name: "Corner Shop" }).count()).toBe(1);
      await undo();
      await soon(() => opened.page.getByRole("heading", { name: "Corner Shop" }).count()).toBe(0);
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
