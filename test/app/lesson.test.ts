// What a lesson's table shows a teacher: messages that are explained, in the built page, by keys alone and by finger alone.
//
// The compiler's words are those that avr-g++ 5.4.0 was recorded with (reference/messages); the causes of the up-loader's messages
// are those of bench/setup.
import type { Page } from "playwright-core";
import { describe, expect } from "vitest";
import { finish } from "../../src/base/index.ts";
import { itemKey } from "../../src/bench/parts/index.ts";
import { rehearseOnce, strongSupply } from "../../src/bench/rehearsal/index.ts";
import { ourLesson } from "../../src/bench/rehearsal/lesson.fixture.ts";
import { setupCauses } from "../../src/bench/setup/index.ts";
import { english } from "../../src/language/catalogue.ts";
import { itemName, languageFor } from "../../src/language/index.ts";
import { rehearseForSchool } from "../../src/school/readiness/index.ts";
import { sample } from "../sample.ts";
import { soon, ways } from "./hands.ts";
import { accessibilityFaults, browserTest, goTo, openPage, withDemo } from "./harness.ts";
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

const en = languageFor("en");
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

/** The line that comes next, and what a table says in the row of a name. */
const nextLine = (page: Page) => page.locator(".walked li.next .n").textContent();
const row = (page: Page, name: string) =>
  page
    .locator(".holds tbody tr", { has: page.locator("th", { hasText: name }) })
    .first()
    .locator("td")
    .allTextContents();
const told = (page: Page) => page.locator(".told").textContent();

// Line numbers are those of lessons/signal-lamp/program.cpp: 20 lights the lamp, 22 darkens it, 27 changes the port light.
for (const [name, size, hands] of ways)
  describe(`a program with its lines running, ${name}`, () => {
    browserTest("steps, goes to a pin change, to a line, back, and again; pins, lamps and values follow", async () => {
      const opened = await withDemo({ ...size, hash: "#/lesson/signal-lamp" });
      const { page } = opened;
      const hand = await hands(page);
      // What the rehearsal found stands above the program too: until it is there, the page still grows.
      await page.locator("table.supplies").waitFor();
      await hand.press("Follow it line by line");
      await soon(() => nextLine(page)).toBe("11");
      await hand.press("Step");
      await soon(() => nextLine(page)).toBe("12");
      expect(await row(page, "D2")).toEqual(["not read yetinput with pull-up"]);
      // The key goes down at 1 s; the program reads it within its 20 ms, and lights the lamp.
      await hand.press("To the next pin change");
      await soon(() => told(page)).toMatch(/^D9: high\. Line 25 comes next, at 1(\.0\d)? s\.$/);
      expect(await row(page, "D9")).toEqual(["high changedoutput"]);
      expect((await row(page, "LED1"))[0]).toMatch(/^lit, 1[12](\.\d)? mA$/);
      expect(await row(page, "LED2")).toEqual(["dark"]);
      expect((await row(page, "now"))[0]).toBe("0");
      await hand.press("Step back");
      await soon(() => nextLine(page)).toBe("20");
      expect(await row(page, "LED1")).toEqual(["dark"]);
      await hand.press("Show all 32 lines");
      await hand.press("Go to line 27");
      await soon(() => nextLine(page)).toBe("27");
      expect((await row(page, "portOpen"))[0]).toBe("true changed");
      await hand.press("Start again");
      await soon(() => nextLine(page)).toBe("11");
      // Before the beginning nothing runs twice: line 11 does not come again.
      await hand.press("Go to line 11");
      await soon(() => told(page)).toBe("Line 11 does not come within this walk. The walk stands where it stood.");
      expect(await accessibilityFaults(page)).toEqual([]);
      expect(await tooSmall(page)).toEqual([]);
      expect(opened.faults).toEqual([]);
      await opened.close();
    });

    browserTest(
      "a hand presses the key when it likes; another program runs in the circuit, and one that does not compile says so",
      async () => {
        const opened = await openPage({ ...size, hash: "#/lesson/signal-lamp" });
        const { page } = opened;
        const hand = await hands(page);
        await page.locator("table.supplies").waitFor();
        await hand.press("Follow it line by line");
        await page.locator(".holds").waitFor();
        await page.getByLabel("You, by hand").check();
        await soon(() => nextLine(page)).toBe("11");
        await page.getByRole("button", { name: "Let it run for 1 s" }).focus();
        await hand.press("Let it run for 1 s");
        await soon(() => told(page)).toMatch(/at 1 s\.$/);
        await hand.press("Make it: B1 pressed");
        await page.getByRole("button", { name: "Make it: B1 released" }).waitFor();
        await page.getByRole("button", { name: "To the next pin change" }).focus();
        await hand.press("To the next pin change");
        await soon(() => told(page)).toMatch(/^D9: high\./);
        await page.locator(".other summary").focus();
        await page.keyboard.press("Enter");
        await hand.paste("Your program", "void setup() {\n  pinMode(10, OUTPUT);\n}\nvoid loop() {\n  analogWrite(10, 51);\n}\n");
        await hand.press("Run it here");
        await soon(() => nextLine(page)).toBe("2");
        await page.getByRole("button", { name: "To the next pin change" }).focus();
        await hand.press("To the next pin change");
        await soon(() => row(page, "D10")).toEqual(["pulses, 51 of 255 (20 % high) changedoutput"]);
        await page.getByLabel("Your program").focus();
        await hand.paste("Your program", "void setup() {\n  pinMode(10, OUTPUT)\n}\nvoid loop() {}\n");
        await hand.press("Run it here");
        await soon(() => told(page)).toBe("The program does not run. The compiler stops at it.");
        await page.locator(".walk .message").getByRole("button", { name: "What does this message mean?" }).click();
        await soon(() => page.getByLabel("The program", { exact: true }).inputValue()).toContain("pinMode(10, OUTPUT)\n");
        expect(opened.faults).toEqual([]);
        await opened.close();
      },
    );
  });

browserTest("on the wall the arrow keys walk, from where the lesson page stood, in large type and without names", async () => {
  const opened = await withDemo({ width: 1280, hash: "#/lesson/7b/signal-lamp/2027-01-26" });
  const { page } = opened;
  await page.getByRole("button", { name: "Follow it line by line" }).click();
  await page.getByRole("button", { name: "To the next pin change" }).click();
  await soon(() => nextLine(page)).toBe("25");
  await page.getByRole("link", { name: "Follow it on the wall" }).click();
  await page.locator(".lineswall .holds").waitFor();
  expect(await nextLine(page)).toBe("25");
  await page.keyboard.press("ArrowRight");
  await soon(() => nextLine(page)).toBe("26");
  await page.keyboard.press("ArrowLeft");
  await soon(() => nextLine(page)).toBe("25");
  await page.keyboard.press("ArrowDown");
  await soon(() => told(page)).toMatch(/^D10: high\./);
  const sizes = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>(".lineswall *")]
      .filter(
        (e) =>
          e.textContent !== "" &&
          !e.closest(".unseen") &&
          [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent?.trim()),
      )
      .map((e) => Number.parseFloat(getComputedStyle(e).fontSize)),
  );
  expect(Math.min(...sizes)).toBeGreaterThanOrEqual(32);
  expect(await accessibilityFaults(page)).toEqual([]);
  await page.keyboard.press("Escape");
  await page.locator(".lessonpage").waitFor();
  expect(opened.faults).toEqual([]);
  await opened.close();
});

// The chip's timer 1 makes 16 MHz / 64 / 510 = 490.2 Hz (ATmega328P data sheet, phase-correct PWM); half of the turn is 127 of 255.
for (const [name, size, hands] of ways)
  describe(`voltage and current over time, ${name}`, () => {
    browserTest("a place is chosen in words; scales, rhythm and jumps are told as the chip makes them", async () => {
      const opened = await openPage({ ...size, hash: "#/lesson/dimmer" });
      const { page } = opened;
      const hand = await hands(page);
      await page.locator("table.supplies").waitFor();
      const list = page.getByLabel("Where do you measure?");
      const places = await list.locator("option").allTextContents();
      expect(places).toContain("current through LED1");
      await list.selectOption({ label: places.find((label) => label.startsWith("voltage at D9"))! });
      const told = page.locator(".waves > p[role=status]");
      await told.waitFor();
      await page.getByLabel("A division lasts").selectOption("1");
      await page.getByLabel("Begins at, s").focus();
      await hand.write("Begins at, s", "1.5");
      await soon(() => told.textContent()).toMatch(
        /^1 V and 1 ms a division\. .*every 2\.04 ms \(490 Hz\), and is high for 49\.8 % of that\.$/,
      );
      await page.locator(".waves summary").focus();
      await page.keyboard.press("Enter");
      const times = await page.locator("table.edges tbody tr td:first-child").allTextContents();
      const at = times.map((text) => Number(text.replace(/[^\d.]/g, "")));
      expect(at).toHaveLength(10);
      for (let i = 2; i < at.length; i += 1) expect(at[i]! - at[i - 2]!).toBeCloseTo(510 / 250, 2);
      // Only the picture that fits the window is seen, and its letters can be read.
      const pictures = page.locator("svg.wave:visible");
      expect(await pictures.count()).toBe(1);
      const letters = await pictures.locator("text").evaluateAll((all) => all.map((t) => t.getBoundingClientRect().height));
      expect(Math.min(...letters)).toBeGreaterThanOrEqual(12);
      await list.selectOption({ label: "current through LED1" });
      await soon(() => told.textContent()).toMatch(
        /^2 mA and 1 ms a division\. The curve lies between 0 A and 1[12](\.\d)? mA\./,
      );
      await page.getByRole("button", { name: "Earlier" }).focus();
      await hand.press("Later");
      await soon(() => page.getByLabel("Begins at, s").inputValue()).toBe("1.505");
      await page.getByLabel("A division lasts").selectOption("500");
      await soon(() => told.textContent()).toContain("changes faster than can be drawn");
      expect(await accessibilityFaults(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(size.width);
      expect(opened.faults).toEqual([]);
      await opened.close();
    });
  });

browserTest(
  "each supply says whether it fits and why, in the words of its rehearsal; what is stressed says what to do now",
  async () => {
    const barrier = ourLesson("barrier");
    const told = finish(rehearseForSchool(barrier, null, 1));
    expect(new Set(told.supplies.map((s) => s.fits)).size).toBe(3);
    const opened = await openPage({ width: 390, hash: "#/lesson/barrier" });
    const { page } = opened;
    await page.locator("table.supplies").waitFor();
    const rows = page.locator("table.supplies tbody tr");
    expect(await rows.count()).toBe(told.supplies.length);
    for (const { supply, fits, why, hours, lessons, hottest } of told.supplies) {
      const name = itemName(en, supply);
      const text = await rows.filter({ has: page.locator("th", { hasText: new RegExp(`^${name}$`) }) }).textContent();
      expect(text, name).toContain(fits === "undetermined" ? "nobody can say" : fits);
      for (const reason of why) expect(text, name).toContain(english.rehearsal.supplyWhy[reason]);
      if (fits === "fits" && hours !== null)
        expect(text, name).toMatch(new RegExp(`hours: ${lessons === 1 ? "one lesson" : `${lessons} lessons`}`));
      if (hottest?.touch === "hot") expect(text, name).toContain("hot: do not touch");
    }
    // What nobody can foresee stands apart from what is stressed, each with what to do.
    const doubts = page.locator(".doubt");
    expect(await doubts.count()).toBe(told.doubts.length);
    expect(told.doubts.length).toBeGreaterThan(0);
    for (const text of await doubts.allTextContents()) expect(text).toMatch(/Do this now: .+/);
    const hazards = page.locator(".hazard:not(.doubt)");
    expect(await hazards.count()).toBe(told.hazards.length);
    expect(told.hazards.length).toBeGreaterThan(0);
    for (const text of await hazards.allTextContents())
      expect(text).toMatch(/^(caution|unsafe): .*Do this now: .*The limit is from: .+/);
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await opened.close();
  },
);

browserTest("a margin holds at both its ends, and what lies beyond does not", async () => {
  const opened = await withDemo({ width: 1280, hash: "#/lesson/7b/quay-lamp-at-dusk/2027-02-16" });
  const { page } = opened;
  const line = page.locator(".margins li", { hasText: /^R1 may be/ });
  await line.waitFor({ timeout: 45_000 });
  const [, least, most] = /from ([\d.]+ k?Ω) to ([\d.]+ k?Ω)\./.exec((await line.textContent()) ?? "") ?? [];
  const lesson = ourLesson("quay-lamp-at-dusk");
  const verdictAt = (ohms: number) =>
    rehearseOnce(lesson, { items: new Map([["R1", itemKey("resistor", { ohms })]]), supply: strongSupply }).verdict;
  const ohmsOf = (text = "") => Number.parseFloat(text) * (text.includes("k") ? 1000 : 1);
  expect(ohmsOf(least)).toBeGreaterThan(0);
  expect(verdictAt(ohmsOf(least))).toBe("ready");
  expect(verdictAt(ohmsOf(most))).toBe("ready");
  expect(verdictAt(ohmsOf(least) * 0.85)).not.toBe("ready");
  expect(verdictAt(ohmsOf(most) * 1.15)).not.toBe("ready");
  await opened.close();
});

describe("everything unfolded fits, and is reached by keys", () => {
  for (const [name, width, language, type] of [
    ["at 320 px", 320, undefined, "100%"],
    ["longer words at 320 px", 320, "xl", "100%"],
    ["from right to left at 390 px", 390, "xr", "100%"],
    ["from right to left at 1280 px", 1280, "xr", "100%"],
    ["twice the type at 390 px", 390, undefined, "200%"],
  ] as const)
    browserTest(`${name}: a walk by hand, a curve with its table, an explained program, the wall`, async () => {
      const opened = await openPage({ width, hash: "#/lesson/dimmer", ...(language ? { language } : {}) });
      const { page } = opened;
      await page.addStyleTag({ content: `html { font-size: ${type} }` });
      await page.locator("table.supplies").waitFor();
      await page
        .locator("section.bench", { has: page.locator("#program") })
        .locator(".acts button")
        .first()
        .click();
      await page.locator(".holds").waitFor();
      await page.locator(".walk input[type=radio]").last().check();
      await page.locator(".knobs").waitFor();
      for (let n = 0; n < 4; n += 1) await page.locator(".ways button").nth(1).click();
      await page.locator(".walk .other summary").click();
      await page.locator(".waves select").first().selectOption({ index: 3 });
      await page.locator(".waves select").last().selectOption("1");
      await page.locator("svg.wave:visible").waitFor();
      await page.locator(".waves summary").click();
      expect(await outside(page)).toEqual([]);
      expect(await accessibilityFaults(page)).toEqual([]);
      await goTo(page, "#/lines/dimmer");
      await page.locator(".lineswall .holds").waitFor();
      expect(await outside(page)).toEqual([]);
      await goTo(page, "#/explain");
      await page.locator("textarea").first().fill(broken);
      await page.locator(".acts button").first().click();
      await answer(page, "explained").waitFor();
      await page.locator("select").first().selectOption("too-large");
      await answer(page, "causes").waitFor();
      expect(await outside(page)).toEqual([]);
      expect(opened.faults).toEqual([]);
      await opened.close();
    });
});

/** What stands beyond an edge of the window. */
function outside(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    return [...document.querySelectorAll<HTMLElement>("body *")]
      .filter((e) => !e.closest(".unseen, .skip, svg, .timetable, [hidden]"))
      .map((e) => ({ e, box: e.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && box.height > 0 && (box.right > width + 1 || box.left < -1))
      .map(
        ({ e, box }) =>
          `${e.tagName}.${e.className} “${e.textContent?.trim().slice(0, 30)}” ${Math.round(box.left)} to ${Math.round(box.right)}`,
      )
      .slice(0, 6);
  });
}

/** What can be pressed and is smaller than a finger. */
function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>(".walk button, .walk summary, .walk input")]
      .filter((e) => e.checkVisibility() && !e.closest("[hidden]"))
      .map((e) => ({ e: e.closest<HTMLElement>("label.row") ?? e, says: e.textContent }))
      .filter(({ e }) => Math.min(e.getBoundingClientRect().width, e.getBoundingClientRect().height) < 43.9)
      .map(({ e, says }) => `${says} ${e.getBoundingClientRect().width} × ${e.getBoundingClientRect().height}`),
  );
}

browserTest("a walk that takes long is stopped when told, and the walk goes on", async () => {
  const opened = await openPage({ width: 1280, hash: "#/lesson/lighthouse" });
  const { page } = opened;
  await page.locator("table.supplies").waitFor();
  await page.getByRole("button", { name: "Follow it line by line" }).click();
  await page.locator(".holds").waitFor();
  await page.locator(".other summary").click();
  const blinks =
    "void setup() {\n  pinMode(9, OUTPUT);\n}\nvoid loop() {\n  digitalWrite(9, HIGH);\n  delay(100);\n  digitalWrite(9, LOW);\n  delay(100);\n}\n";
  await page.getByLabel("Your program").fill(blinks);
  await page.getByLabel("You, by hand").check();
  await page.getByRole("button", { name: "Run it here" }).click();
  await soon(() => nextLine(page)).toBe("2");
  // However quick the computer is: for a while the worker hears nothing, as one that has very much to do.
  await page.evaluate(() => {
    const scope = globalThis as unknown as { isDeaf: boolean };
    const { postMessage } = Worker.prototype;
    Worker.prototype.postMessage = function (...message: unknown[]) {
      if (!scope.isDeaf) Reflect.apply(postMessage, this, message);
    };
    scope.isDeaf = true;
  });
  await page.getByRole("button", { name: "Go to line 8" }).click();
  const stop = page.getByRole("button", { name: "Stop here" });
  await stop.waitFor({ timeout: 10_000 });
  await stop.click();
  await soon(() => told(page)).toBe("The work was stopped. What is known already stays.");
  await stop.waitFor({ state: "detached" });
  // By now that worker was ended; a fresh one hears.
  await page.waitForTimeout(600);
  await page.evaluate(() => Object.assign(globalThis, { isDeaf: false }));
  await page.getByRole("button", { name: "Step", exact: true }).click();
  await soon(() => nextLine(page)).toBe("5");
  expect(opened.faults).toEqual([]);
  await opened.close();
});

browserTest("a curve is that of the class: with the part that it settled on in place of the written one", async () => {
  const opened = await withDemo({ width: 1280, hash: "#/lesson/7b/quay-lamp-at-dusk/2027-02-16" });
  const { page } = opened;
  await page.locator("table.supplies").waitFor();
  const told = page.locator(".waves > p[role=status]");
  const amps = async () => Number(/and ([\d.]+) mA\./.exec((await told.textContent()) ?? "")?.[1]);
  await page.getByLabel("Where do you measure?").selectOption({ label: "current through LED1" });
  await told.waitFor();
  const written = await amps();
  await page.locator("table.values tr", { hasText: "resistor, 470 Ω" }).getByRole("button").click();
  // Ohm's law: the LED holds about 2 V, the pin has about 25 Ω.
  await soon(async () => (await amps()) / written).toBeCloseTo((220 + 25) / (470 + 25), 1);
  await opened.close();
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
  await goTo(page, "#/lesson/lighthouse");
  await page.locator("table.supplies").waitFor();
  await page.getByRole("button", { name: "Follow it line by line" }).click();
  await page.locator(".other summary").click();
  for (const text of nastyStrings(10)) {
    await page
      .getByLabel("Your program")
      .fill(
        `const char* a = "${text.replace(/["\\\n\r]/g, " ")}";\nvoid setup() { Serial.begin(9600); Serial.println(a); }\nvoid loop() {}`,
      );
    await page.getByRole("button", { name: "Run it here" }).click({ timeout: 5000 });
    await page.getByRole("button", { name: "To the next pin change" }).click({ timeout: 5000 });
  }
  await soon(() => page.locator(".holds").count()).toBe(1);
  await goTo(page, "#/explain");
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
