// A frame without an origin has no storage at all: the store answers, works as long as the page, and never says "kept".
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { call, command, drop, launch, newFolder, pageText } from "./browser.ts";

const folder = newFolder("frame");
afterAll(() => drop(folder));

test.skipIf(command === null && !process.env.REQUIRE_TOOLS)(
  "in a sandboxed frame the class lasts as long as the page",
  async () => {
    writeFileSync(join(folder, "inner.html"), await pageText());
    writeFileSync(
      join(folder, "outer.html"),
      `<!doctype html><title>o</title><iframe sandbox="allow-scripts" src="inner.html"></iframe>`,
    );
    const context = await launch(join(folder, "profile"));
    const page = await context.newPage();
    await page.goto(`file://${join(folder, "outer.html")}`);
    const frame = page.frames().find((f) => f.url().endsWith("inner.html"))!;
    await frame.waitForFunction(() => "acts" in globalThis);
    const hasNone = await frame.evaluate(() => {
      try {
        return indexedDB.open("x") === null;
      } catch (error) {
        return (error as Error).name;
      }
    });
    expect(hasNone).toBe("SecurityError");

    const start = Date.now();
    const begun = await call(frame, "begin", "c1");
    expect(Date.now() - start).toBeLessThan(2000);
    expect(begun).toMatchObject({ found: null, storeTrouble: "no-storage" });
    const state = await call(frame, "save", 1, 5000);
    expect(state).toMatchObject({ word: "not kept", why: "no-storage" });
    // A day before can still be restored within this page.
    expect(await call(frame, "isWhole", 1, 5000)).toBe(true);
    await context.close();
  },
);
