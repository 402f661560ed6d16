// What a lesson's table shows a teacher: messages that are explained, in the built page, by keys alone and by finger alone.
//
// The compiler's words are those that avr-g++ 5.4.0 was recorded with (reference/messages); the causes of the up-loader's messages
// are those of bench/setup.
import type { Page } from "playwright-core";
import { describe, expect } from "vitest";
import { setupCauses } from "../../src/bench/setup/index.ts";
import { english } from "../../src/language/catalogue.ts";
import { sample } from "../sample.ts";
import { soon, ways } from "./hands.ts";
import { accessibilityFaults, browserTest, openPage, withDemo } from "./harness.ts";
import { nastyStrings } from "./nastyStrings.ts";

/** The semicolon is missing at the end of line 4; the compiler names line 5. */
const broken = `const int ledPin = 9;

void setup() {
  pinMode(ledPin, OUTPUT)
  Serial.begin(9600);
}

void loop() {
  digitalWrite(ledPin, HIGH);
}
`;

const answer = (page: Page, id: string) => page.locator(`section.answer[aria-labelledby=${id}]`);

for (const [name, size, hands] of ways)
  describe(`what does this message mean, ${name}`, () => {
    browserTest(
      "in two taps from Today a pasted program is explained, and in other words where the compiler is newer",
      async () => {
        const opened = await withDemo(size);
        const { page } = opened;
        const hand = await hands(page);
        await hand.press("What does this message mean?");
        expect(hand.taps()).toBeLessThanOrEqual(2);
        await page.locator("h1", { hasText: "What does this message mean?" }).waitFor();
        await hand.paste("The program", broken);
        await hand.press("Explain it");
        const told = answer(page, "explained");
        await told.waitFor();
        await soon(() => page.evaluate(() => document.activeElement?.id)).toBe("explained");
        expect(await told.locator(".said").textContent()).toBe("program.cpp:5:3: error: expected ';' before 'Serial'");
        expect(await told.locator("li.marked").textContent()).toMatch(/^5\s*Serial\.begin\(9600\);$/);
        expect(await told.locator("li.marked mark").textContent()).toBe("Serial");
        expect(await told.locator("dd").allTextContents()).toHaveLength(3);
        expect(await told.locator("dd").nth(1).textContent()).toContain("4");
        expect(await told.locator("dd mark").textContent()).toBe(";");
        expect(await accessibilityFaults(page)).toEqual([]);
        // A name with the wrong capitals: only the newer compiler asks what was meant.
        await hand.paste("The program", broken.replace("OUTPUT)", "OUTPUT);").replace("Write(ledPin", "Write(ledpin"));
        await hand.press("Explain it");
        const words = () => told.locator(".said b").textContent();
        await soon(words).toBe("'ledpin' was not declared in this scope");
        await page.getByLabel("the newer words (GCC 12)").check();
        await soon(words).toBe("'ledpin' was not declared in this scope; did you mean 'ledPin'?");
        await page.reload();
        await page.locator("main.explain").waitFor();
        await soon(() => page.getByLabel("the newer words (GCC 12)").isChecked()).toBe(true);
        expect(opened.faults).toEqual([]);
        await opened.close();
      },
    );

    browserTest("a message of the up-loader is chosen or pasted, and the causes stand in their order", async () => {
      const opened = await openPage({ ...size, hash: "#/explain" });
      const { page } = opened;
      const hand = await hands(page);
      const told = answer(page, "causes");
      const causes = () => told.locator("ol.causes b").allTextContents();
      const expected = (message: "not-in-sync" | "port-busy") =>
        setupCauses(message).map((cause, n) => `${n + 1}. ${english.setup.setupCause[cause]}`);
      await page.getByLabel("What does the computer say?").selectOption("not-in-sync");
      await soon(causes).toEqual(expected("not-in-sync"));
      await hand.paste(
        "Or paste what it wrote",
        'begin\nser_open(): can\'t open device "\\\\.\\COM4": Access is denied.\nprogrammer is not responding',
      );
      await hand.press("Find the causes");
      await soon(causes).toEqual(expected("port-busy"));
      expect(await told.textContent()).toContain("COM4");
      expect(await accessibilityFaults(page)).toEqual([]);
      await hand.paste("Or paste what it wrote", "Good morning.");
      await hand.press("Find the causes");
      await page.getByText("Nothing in this text is known.").waitFor();
      expect(opened.faults).toEqual([]);
      await opened.close();
    });
  });

browserTest("whatever is pasted is text: nothing runs, nothing is cut off, the page goes on", async () => {
  const opened = await openPage({ width: 390, hash: "#/explain" });
  const { page } = opened;
  page.on("dialog", (dialog) => {
    throw new Error(`a dialog opened: ${dialog.message()}`);
  });
  for (const text of nastyStrings(sample(25, 250))) {
    await page.getByLabel("The program", { exact: true }).fill(`void setup() { ${text} }`);
    await page.getByRole("button", { name: "Explain it" }).click({ timeout: 5000 });
    await page.getByLabel("Or paste what it wrote").fill(`${text}\nprogrammer is not responding ${text}`);
    await page.getByRole("button", { name: "Find the causes" }).click({ timeout: 5000 });
  }
  await answer(page, "explained").waitFor();
  // A file of one line that is longer than any window, and one that is no text at all.
  const files = page.locator("input[type=file]").first();
  await files.setInputFiles({
    name: "long.cpp",
    mimeType: "text/plain",
    buffer: Buffer.from(`int a = ${"1 + ".repeat(40_000)};`),
  });
  await soon(() => answer(page, "explained").locator(".said").textContent()).toContain("long.cpp:1:");
  await files.setInputFiles({
    name: "no.cpp",
    mimeType: "text/plain",
    buffer: Buffer.from(Array.from({ length: 999 }, (_, n) => (n * 7) % 256)),
  });
  await soon(() => answer(page, "explained").locator(".said").textContent()).toContain("no.cpp:");
  expect(await page.evaluate(() => (globalThis as { nastyRan?: number }).nastyRan)).toBeUndefined();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  expect(opened.faults).toEqual([]);
  await opened.close();
});
