// Reliability test R6: no room. A small quota by the browser's own tools, and a disk that is really full.
//
// Each time: the save that did not fit is told as such, the last one that was called kept is there and whole, also after the browser
// was closed and opened; and when room returns one word from the person keeps what was waiting.
import { execFileSync, spawnSync } from "node:child_process";
import { mkdirSync, rmSync, statfsSync, writeFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { call, command, drop, launch, newFolder, pageFile, pageText } from "./browser.ts";

const folder = newFolder("room");
let server: Server;
let origin = "";
beforeAll(async () => {
  const html = await pageText();
  server = createServer((_, answer) => answer.setHeader("content-type", "text/html").end(html)).listen(0, "127.0.0.1");
  await new Promise((resolve) => server.once("listening", resolve));
  origin = `http://localhost:${(server.address() as AddressInfo).port}`;
});
afterAll(() => {
  server.close();
  drop(folder);
});
const skip = test.skipIf(command === null && !process.env.REQUIRE_TOOLS);

for (const megabytes of [1, 2, 5])
  skip(`a quota of ${megabytes} MB: what does not fit is told, nothing kept is lost, and it recovers`, async () => {
    const profile = join(folder, `quota-${megabytes}`);
    const letters = 150_000;
    let context = await launch(profile);
    let page = await context.newPage();
    const cdp = await context.newCDPSession(page);
    await page.goto(origin);
    await call(page, "begin", "c1");
    await cdp.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: megabytes * 1e6 });

    // A whole term of saves: older generations make room, so that a small quota does not end the work.
    let acked = 0;
    let refused = 0;
    for (let n = 1; n <= 40; n++) {
      const state = await call(page, "save", n, letters);
      if (state.word === "kept") acked = n;
      else {
        refused += 1;
        expect(state.word === "not kept" && state.why).toBe("full");
      }
    }
    // Now something else takes the rest, and a save comes that is larger than what is left.
    const filled = await call(page, "fill", 50e6);
    const large = Math.max(megabytes * 600_000, 700_000);
    const state = await call(page, "save", 41, large);
    expect(state.word === "not kept" && state.why).toBe("full");
    if (acked > 0) expect(await call(page, "isWhole", acked, letters)).toBe(true);
    const again = await call(page, "retry");
    expect(again.word === "not kept" && again.why).toBe("full");

    // Room returns.
    await cdp.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 500e6 });
    expect((await call(page, "retry")).word).toBe("kept");
    await context.close();
    context = await launch(profile);
    page = await context.newPage();
    await page.goto(origin);
    await call(page, "begin", "c1");
    expect(await call(page, "isWhole", 41, large)).toBe(true);
    await context.close();
    console.log(
      `quota ${megabytes} MB: kept ${acked} of 40 saves of 150 kB (${refused} refused as full), filled with ${filled} B`,
    );
    expect(acked).toBeGreaterThan(0);
  });

/** A disk of so many megabytes, or null where this machine gives none. */
function smallDisk(megabytes: number): string | null {
  const disk = join(folder, "disk");
  mkdirSync(disk, { recursive: true });
  return spawnSync("mount", ["-t", "tmpfs", "-o", `size=${megabytes}m`, "tmpfs", disk]).status === 0 ? disk : null;
}

const canMount = process.getuid?.() === 0 && process.platform === "linux";
test.skipIf((command === null || !canMount) && !process.env.REQUIRE_TOOLS)(
  "a disk of 60 MB that is really full: told, nothing kept is lost, and it recovers",
  async (context_) => {
    const disk = smallDisk(60);
    if (disk === null) return context_.skip("this machine mounts no disk in memory");
    try {
      const address = await pageFile(folder);
      let context = await launch(join(disk, "profile"));
      let page = await context.newPage();
      await page.goto(address);
      await call(page, "begin", "c1");
      for (let n = 1; n <= 5; n++) expect((await call(page, "save", n, 100_000)).word).toBe("kept");

      const ballast = join(disk, "ballast");
      const fill = () => {
        let text = Buffer.alloc(1 << 20, 1);
        const parts: Buffer[] = [];
        // Everything that is free, to the last block.
        for (let free = statfsSync(disk).bavail * 4096; free > 0; free -= text.length) {
          if (free < text.length) text = text.subarray(0, free);
          parts.push(text);
        }
        try {
          writeFileSync(ballast, Buffer.concat(parts));
        } catch {
          // Full: as wanted.
        }
      };
      fill();
      const heard = [];
      let acked = 5;
      let refused = 0;
      for (let n = 6; n <= 12; n++) {
        const state = await call(page, "save", n, 300_000);
        heard.push(state.word === "not kept" ? state.why : state.word);
        if (state.word === "kept") acked = n;
        else refused = n;
        fill();
      }
      const lettersOf = (n: number) => (n <= 5 ? 100_000 : 300_000);
      expect(refused, `told: ${heard}`).toBeGreaterThan(0);
      expect(await call(page, "isWhole", acked, lettersOf(acked))).toBe(true);

      rmSync(ballast);
      const state = await call(page, "retry");
      const recovered = state.word === "kept" ? state : await call(page, "save", 13, 100_000);
      expect(recovered.word, "after room returned").toBe("kept");
      const last: [number, number] = state.word === "kept" ? [12, 300_000] : [13, 100_000];
      await context.close();
      context = await launch(join(disk, "profile"));
      page = await context.newPage();
      await page.goto(address);
      const begun = await call(page, "begin", "c1");
      expect(begun.trouble).toBe(null);
      expect(await call(page, "isWhole", ...last)).toBe(true);
      await context.close();
      console.log(`full disk: ${heard.join(", ")}; after room returned: ${state.word}`);
    } finally {
      execFileSync("umount", ["-l", disk]);
    }
  },
);
