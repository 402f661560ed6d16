// The pupils' place in a real browser: each act once with the keyboard alone at 1280 pixels and once with a finger at 390.
//
// Names follow from the demo (demo/harbour.json), which is invented.
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect } from "vitest";
import { type Hands, soon, ways } from "./hands.ts";
import { accessibilityFaults, browserTest, type OpenedPage, planned, withDemo } from "./harness.ts";

for (const [name, size, make] of ways)
  describe(name, () => {
    let opened: OpenedPage;
    let hands: Hands;
    beforeAll(async () => {
      opened = await withDemo({ ...size, hash: "#/pupils" });
      opened.page.setDefaultTimeout(6000);
      hands = await make(opened.page);
      if (size.width < 500) await hands.press("Look and change");
    });
    afterAll(async () => {
      await opened?.close();
    });
    const names = () =>
      opened.page.locator("table.pupils th input").evaluateAll((all) => all.map((el) => (el as HTMLInputElement).value));
    const main = async () => (await opened.page.locator("main").textContent()) ?? "";
    const undo = () => hands.press("Undo");

    browserTest("a pupil is renamed, removed wholly and comes back by undo, without a question", async () => {
      await hands.write("Name of Amara Okonjo", "Amara O.");
      await soon(names).toContain("Amara O.");
      await undo();
      await soon(names).toContain("Amara Okonjo");
      const taps = hands.taps();
      await hands.press("Remove Emre Aydemir");
      expect(hands.taps() - taps).toBe(1);
      await soon(async () => (await names()).length).toBe(29);
      // Emre was kept apart from Tariq: the wish goes with him, and comes back with him.
      await soon(main).not.toContain("are kept apart");
      await undo();
      await soon(async () => (await names()).length).toBe(30);
      await soon(main).toContain("Emre Aydemir and Tariq Mansour are kept apart");
    });

    browserTest("a pupil is added", async () => {
      await hands.write("One more pupil", "Ōtani 太郎");
      await soon(async () => (await names()).at(-1)).toBe("Ōtani 太郎");
      await undo();
      await soon(async () => (await names()).length).toBe(30);
      await hands.write("One more pupil", "   ");
      await soon(() => opened.page.locator("form .problem").first().textContent()).not.toBe("");
    });

    browserTest("two are kept apart, three together, and a wish is dropped", async () => {
      await hands.press("Tick Giang Lê");
      await hands.press("Tick Hana Morikawa");
      await hands.press("Keep apart");
      await soon(main).toContain("Giang Lê and Hana Morikawa are kept apart");
      await hands.press("Drop this wish: Giang Lê and Hana Morikawa");
      await soon(main).not.toContain("Giang Lê and Hana Morikawa are kept apart");
      for (const pupil of ["Giang Lê", "Hana Morikawa", "Jana Svobodová"]) await hands.press(`Tick ${pupil}`);
      await hands.press("Keep together");
      await soon(main).toContain("Giang Lê, Hana Morikawa and Jana Svobodová stay together");
      // Who stays together cannot be kept apart: it is said, and nothing changes.
      await hands.press("Tick Giang Lê");
      await hands.press("Tick Hana Morikawa");
      await hands.press("Keep apart");
      await soon(() => opened.page.locator("tr.open .problem").textContent()).toContain("Giang Lê");
      await hands.press("Tick nobody");
      await undo();
      await soon(main).not.toContain("Jana Svobodová stay together");
    });

    browserTest("the size of teams and the column that they are balanced on", async () => {
      await opened.page.getByRole("radio", { name: "teams of 2" }).check();
      await soon(main).toContain("in teams of 2.");
      await undo();
      await soon(main).toContain("in teams of 3.");
      await opened.page.getByRole("radio", { name: "nothing" }).check();
      await undo();
      await soon(() => opened.page.getByRole("radio", { name: "reads" }).isChecked()).toBe(true);
      await planned(opened.page);
    });

    browserTest("the rota says how long nobody is together twice, and who does what", async () => {
      await planned(opened.page);
      await soon(main).toContain("In the first 4 of 4 lessons nobody is together twice");
      await soon(() => opened.page.locator(".team-lines tbody tr").count()).toBe(10);
    });

    browserTest("who is away on a day is ticked, and the teams are mended", async () => {
      await hands.press("Who is away? 12 January");
      await hands.press("Kofi Ansah");
      await soon(main).toContain("Kofi Ansah is away.");
      await planned(opened.page);
      expect(await opened.page.locator(".team-lines").first().textContent()).not.toContain("Kofi Ansah");
      await undo();
      await soon(main).not.toContain("Kofi Ansah is away.");
      await planned(opened.page);
    });

    browserTest("a pasted list is looked at before it is taken; who stays keeps what is known", async () => {
      await hands.press("Paste a list, or open a table");
      await hands.paste("Your list", "name\treads\nAmara Okonjo\t1\nNew Pupil\tmany\nOther Pupil\t2\n");
      await hands.press("Look at what is understood");
      await soon(() => opened.page.locator(".understood").textContent()).toContain("line 3");
      await hands.press("Leave this line out");
      await soon(() => opened.page.locator(".understood h2").textContent()).toBe("2 lines are understood");
      await hands.press("Take this list in place of the old one");
      await soon(names).toEqual(["Amara Okonjo", "Other Pupil"]);
      await undo();
      await soon(async () => (await names()).length).toBe(30);
    });

    browserTest("a second class: added, shown, renamed, removed", async () => {
      await hands.write("One more class", "Class 8a");
      await soon(() => opened.page.locator("h1").textContent()).toBe("Pupils of Class 8a");
      await soon(main).toContain("Nobody is on the list yet.");
      await hands.write("Name of Class 8a", "Class 8b");
      await soon(() => opened.page.locator("h1").textContent()).toBe("Pupils of Class 8b");
      await hands.press("Remove Class 8b");
      await soon(() => opened.page.locator("h1").textContent()).toBe("Pupils of Class 7b");
      await planned(opened.page);
    });

    browserTest("the list is saved as a table that a spreadsheet opens", async () => {
      const saved = opened.page.waitForEvent("download");
      await hands.press("Save the list as a table");
      const text = readFileSync((await (await saved).path()) ?? "", "utf8");
      expect(text).toMatch(/^\ufeffid,name,reads\r\n/);
      expect(text.split("\r\n")).toHaveLength(32);
      expect(text).toContain("p30,Đorđe Petrović,3");
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
