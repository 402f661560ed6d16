// The session in a real browser: acts outlive a reload with their way back, a second tab follows, the clock may go back.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, expect } from "vitest";
import { readClassFile } from "../../src/school/file/index.ts";
import { builtFile } from "./enginePage.ts";
import { browserTest, goTo, openPage, planned, withDemo } from "./harness.ts";

const folder = mkdtempSync(join(tmpdir(), "benchday-session-"));
afterAll(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));

browserTest("what was done and its way back are there after the browser was closed and opened", async () => {
  const profile = join(folder, "reload");
  const first = await withDemo({ profile });
  const box = first.page.getByRole("checkbox").first();
  await box.check();
  await first.page.locator("footer.block").getByText("on this computer").waitFor();
  await first.page.waitForTimeout(600);
  await first.close();
  const second = await openPage({ profile });
  await planned(second.page);
  const again = second.page.getByRole("checkbox").first();
  expect(await again.isChecked()).toBe(true);
  await second.page.locator("footer.block").getByRole("button", { name: "Undo" }).click();
  expect(await again.isChecked()).toBe(false);
  await second.close();
});

browserTest("a second tab follows the first one, acts nothing, and takes over when asked to", async () => {
  const { page, context, close } = await withDemo({ profile: join(folder, "tabs") });
  const other = await context.newPage();
  await other.goto(`${pathToFileURL(builtFile).href}#/today`);
  await other.getByText("This tab follows another one").waitFor();
  await planned(other);
  await page.bringToFront();
  await page.getByRole("checkbox").first().check();
  await expect.poll(() => other.getByRole("checkbox").first().isChecked()).toBe(true);
  await other.bringToFront();
  await other.getByRole("checkbox").nth(1).click();
  expect(await other.getByRole("checkbox").nth(1).isChecked()).toBe(false);
  expect(await other.locator("footer.block").getByText("(before this page was opened)").count()).toBe(1);
  await other.getByRole("button", { name: "Take over here" }).click();
  await other.getByText("This tab follows another one").waitFor({ state: "detached" });
  await page.getByText("This tab follows another one").waitFor();
  await close();
});

browserTest(
  "a storage that is held is told within three seconds, all else works, and the class comes when it is free",
  async () => {
    const profile = join(folder, "held");
    const first = await withDemo({ profile });
    await first.page.getByRole("checkbox").first().check();
    await first.page.waitForTimeout(600);
    const page = await first.context.newPage();
    // The databases answer nothing until they are let go.
    await page.addInitScript(() => {
      const waiting: (() => void)[] = [];
      let isHeld = true;
      const open = IDBFactory.prototype.open;
      IDBFactory.prototype.open = function (...asked) {
        const request = open.apply(this, asked);
        const listen = request.addEventListener.bind(request) as (type: string, hear: (event: Event) => void) => void;
        request.addEventListener = ((type: string, hear: (event: Event) => void) => {
          if (!isHeld) return listen(type, hear);
          waiting.push(() => {
            if (request.readyState === "pending") listen(type, hear);
            else if (type === "success") hear({ target: request } as unknown as Event);
          });
        }) as typeof request.addEventListener;
        return request;
      };
      Object.assign(globalThis, {
        letGo() {
          isHeld = false;
          for (const go of waiting) go();
        },
      });
    });
    await first.page.close();
    const since = Date.now();
    await page.goto(`${pathToFileURL(builtFile).href}#/first`);
    await page.locator(".bar", { hasText: "Another tab holds the storage." }).waitFor();
    expect(Date.now() - since).toBeLessThan(6000);
    await page
      .getByRole("link", { name: "Look at the harbour class" })
      .or(page.getByRole("button", { name: "Look at the harbour class" }))
      .waitFor();
    await page.evaluate(() => (globalThis as unknown as { letGo(): void }).letGo());
    await page.locator(".bar", { hasText: "Another tab holds the storage." }).waitFor({ state: "detached" });
    await goTo(page, "#/today");
    await planned(page);
    expect(await page.getByRole("checkbox").first().isChecked()).toBe(true);
    await first.close();
  },
);

browserTest("half-typed text outlives Back, another place and a reload, and goes when it was taken", async () => {
  const { page, close } = await withDemo({ profile: join(folder, "drafts"), hash: "#/pupils" });
  const name = page.getByLabel("One more pupil");
  await name.fill("Wanj");
  await goTo(page, "#/course");
  await page.goBack();
  await expect.poll(() => name.inputValue()).toBe("Wanj");
  await page.reload();
  await planned(page);
  await expect.poll(() => name.inputValue()).toBe("Wanj");
  await name.press("End");
  await name.pressSequentially("iru");
  await name.press("Enter");
  await page.getByText("Wanjiru joined Class 7b.").first().waitFor();
  await expect.poll(() => name.inputValue()).toBe("");
  await goTo(page, "#/course");
  await goTo(page, "#/pupils");
  expect(await name.inputValue()).toBe("");
  // A field that acts when it is left: it does so also with what was put back.
  await goTo(page, "#/settings");
  await page.locator("#room").focus();
  await page.locator("#room").evaluate((box: HTMLInputElement) => box.select());
  await page.keyboard.type("Boat ho");
  await page.evaluate(() => history.back());
  await page.locator("h1", { hasText: "Class 7b" }).waitFor();
  await page.goForward();
  await expect.poll(() => page.inputValue("#room")).toBe("Boat ho");
  await page.locator("#room").focus();
  await page.locator("#sockets").focus();
  await page.getByText("What is known of the room changed.").first().waitFor();
  await close();
});

browserTest("a clock that went back is told, and nothing is lost", async () => {
  const profile = join(folder, "clock");
  const first = await withDemo({ profile });
  await first.page.getByRole("checkbox").first().check();
  await first.page.waitForTimeout(600);
  await first.close();
  const second = await openPage({ profile, now: "2012-01-01T08:00:00" });
  await second.page.getByText("which is before the class was last kept").waitFor();
  await second.close();
});

browserTest("another class of the file is chosen in the head and stays chosen", async () => {
  const { page, close } = await withDemo();
  await page.locator(".head select").selectOption({ label: "Class 7c" });
  await page.getByText("8 teams").waitFor();
  await goTo(page, "#/course");
  await page.locator("h1", { hasText: "Class 7c" }).waitFor();
  await page.reload();
  await page.locator("h1", { hasText: "Class 7c" }).waitFor();
  await close();
});

browserTest("a place that breaks says so and gives the class as a file", async () => {
  const { page, close } = await withDemo();
  // A fault is planted where every place looks: the heading of the course.
  await page.evaluate(() => {
    const create = document.createElement.bind(document);
    document.createElement = ((tag: string) => {
      if (tag === "h2" && location.hash === "#/course") throw new Error("planted");
      return create(tag);
    }) as typeof document.createElement;
    const createNs = document.createElementNS.bind(document);
    document.createElementNS = ((ns: string, tag: string) => {
      if (tag === "h2" && location.hash === "#/course") throw new Error("planted");
      return createNs(ns as "http://www.w3.org/1999/xhtml", tag as "a");
    }) as typeof document.createElementNS;
  });
  await page.getByRole("link", { name: "Course" }).click();
  await page.getByText("This page has a fault of ours").waitFor();
  const [file] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save a copy" }).click()]);
  expect(file.suggestedFilename()).toMatch(/^class-7b-7c-.*\.json$/);
  await page.getByRole("link", { name: "Today" }).click();
  await page.locator("h1", { hasText: "The lighthouse" }).waitFor();
  await close();
});

/** Makes every save fail, or lets them through again. */
const storageFails = (page: Page, fails: boolean) =>
  page.evaluate((on) => {
    const world = globalThis as unknown as { put?: typeof IDBObjectStore.prototype.put };
    world.put ??= IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = on
      ? () => {
          throw new DOMException("no room", "QuotaExceededError");
        }
      : world.put;
  }, fails);
const foot = (page: Page) => page.locator("footer.block");
const box = (page: Page, n: number) => page.getByRole("checkbox").nth(n);

browserTest("what is not kept stays on screen when another tab takes over, and goes on top when a person says so", async () => {
  const { page, context, close } = await withDemo({ profile: join(folder, "unkept-tabs") });
  await foot(page).getByText("on this computer").waitFor();
  const other = await context.newPage();
  await other.goto(`${pathToFileURL(builtFile).href}#/today`);
  await planned(other);
  await storageFails(page, true);
  await page.bringToFront();
  await box(page, 0).check();
  await page.getByText(/^Not kept since/).waitFor();
  await other.bringToFront();
  await other.getByRole("button", { name: "Take over here" }).click();
  await other.getByText("This tab follows another one").waitFor({ state: "detached" });
  await box(other, 2).check();
  await foot(other).getByText("on this computer").waitFor();
  await page.bringToFront();
  await page.waitForTimeout(500);
  expect(await box(page, 0).isChecked()).toBe(true);
  expect(await page.getByText(/^Not kept since/).count()).toBe(1);
  await storageFails(page, false);
  await page.getByRole("button", { name: "Take over here" }).click();
  await page.getByText("Another tab kept something newer").waitFor();
  await page.getByRole("button", { name: "Try again" }).click();
  await page.getByText(/^Not kept since/).waitFor({ state: "detached" });
  await expect.poll(() => box(other, 0).isChecked()).toBe(true);
  await close();
});

browserTest("a class that was left before it could be kept is held, and comes back", async () => {
  const { page, close } = await withDemo();
  await storageFails(page, true);
  await box(page, 1).check();
  await page.getByText(/^Not kept since/).waitFor();
  await goTo(page, "#/settings");
  await page.getByRole("button", { name: "Look at the harbour class (invented)" }).click();
  await page.getByText("was left before it could be kept").waitFor();
  await planned(page);
  expect(await box(page, 1).isChecked()).toBe(false);
  await storageFails(page, false);
  await page.getByRole("button", { name: "Open it again" }).click();
  await expect.poll(() => box(page, 1).isChecked()).toBe(true);
  await page.getByText("was left before it could be kept").waitFor({ state: "detached" });
  await foot(page).getByText("on this computer").waitFor();
  await close();
});

browserTest("a day that was taken back gives back what was on screen, also what was not kept", async () => {
  const { page, close } = await withDemo();
  await box(page, 0).check();
  await foot(page).getByText("on this computer").waitFor();
  await page.waitForTimeout(400);
  await storageFails(page, true);
  await box(page, 1).check();
  await page.getByText(/^Not kept since/).waitFor();
  await goTo(page, "#/settings");
  await page
    .getByRole("button", { name: /look into the state/ })
    .last()
    .click();
  await page.getByRole("button", { name: "Take this state back" }).click();
  await storageFails(page, false);
  await page.locator("#days-before .says").getByRole("button").click();
  await goTo(page, "#/today");
  await expect.poll(() => box(page, 1).isChecked()).toBe(true);
  expect(await box(page, 0).isChecked()).toBe(true);
  await close();
});

browserTest("a tab that follows takes no day back and no class off", async () => {
  const { page, context, close } = await withDemo({ profile: join(folder, "follower") });
  await box(page, 0).check();
  await foot(page).getByText("on this computer").waitFor();
  await page.waitForTimeout(400);
  const other = await context.newPage();
  await other.goto(`${pathToFileURL(builtFile).href}#/settings`);
  await other.getByText("This tab follows another one").waitFor();
  await other
    .getByRole("button", { name: /look into the state/ })
    .last()
    .click();
  await other.getByRole("button", { name: "Take this state back" }).click();
  await expect.poll(() => other.getByText("This tab follows another one").count()).toBe(2);
  expect(await other.locator("#days-before .says").count()).toBe(0);
  await other.getByRole("button", { name: /take .* off this computer/ }).click();
  await other.waitForTimeout(300);
  expect(await foot(other).getByText("Class 7b", { exact: true }).count()).toBe(1);
  await page.bringToFront();
  expect(await box(page, 0).isChecked()).toBe(true);
  await close();
});

browserTest(
  "in a sandboxed frame lessons and papers work, nothing is called kept, and the class goes out as a file",
  async () => {
    const outer = join(folder, "outer.html");
    writeFileSync(
      outer,
      `<!doctype html><iframe sandbox="allow-scripts allow-downloads" width=1200 height=3000 src="${pathToFileURL(builtFile).href}"></iframe>`,
    );
    const { page, close } = await openPage({ file: outer });
    const frame = page.frameLocator("iframe");
    await frame
      .getByRole("link", { name: /Look at the harbour class|harbour class/ })
      .or(frame.getByRole("button", { name: /harbour class/ }))
      .first()
      .click();
    await frame.getByRole("heading", { name: "The lighthouse" }).waitFor();
    await frame.getByText("This browser keeps nothing here").waitFor();
    for (const [place, heading] of [
      ["Course", /Class 7b: 4 lessons/],
      ["Cupboard", /^Cupboard$/],
      ["Pupils", /Pupils of Class 7b/],
      ["Print", /Everything for The lighthouse/],
    ] as const) {
      await frame.getByRole("link", { name: place, exact: true }).click();
      await frame.getByRole("heading", { name: heading }).waitFor();
    }
    await frame
      .getByText(/^11 sheets/)
      .first()
      .waitFor();
    await frame.getByRole("link", { name: "Course", exact: true }).click();
    await frame.getByRole("link", { name: "The barrier" }).click();
    await frame.getByRole("heading", { name: "The barrier" }).waitFor();
    expect(await frame.locator("footer.block").getByText("on this computer").count()).toBe(0);
    const [copy] = await Promise.all([
      page.waitForEvent("download"),
      frame.getByRole("button", { name: "Save a copy" }).first().click(),
    ]);
    expect(readClassFile("copy.json", readFileSync(await copy.path(), "utf8")).value?.classes.map((c) => c.id)).toEqual([
      "7b",
      "7c",
    ]);
    await close();
  },
);

browserTest("a bookmark of a place, without a class, begins at the first page", async () => {
  const { page, close } = await openPage({ hash: "#/today" });
  await page
    .getByRole("link", { name: "Answer six questions" })
    .or(page.getByRole("button", { name: "Answer six questions" }))
    .first()
    .waitFor();
  await close();
});

browserTest("a language with the name of a part of every object is an unknown language", async () => {
  const { page, close } = await openPage({ language: "__proto__" });
  await page.getByRole("heading", { name: "Which lessons can you hold" }).waitFor();
  await close();
});
