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
    // Now something else takes the rest, and a save comes that no giving up of older ones makes room for.
    const filled = await call(page, "fill", 50e6);
    const large = megabytes * 1_100_000;
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

/** Takes everything that is free on a disk, to the last block. */
function fillUp(disk: string, file: string): void {
  try {
    writeFileSync(file, Buffer.alloc(statfsSync(disk).bavail * statfsSync(disk).bsize, 1));
  } catch {
    // Full, as wanted.
  }
}

const canMount = process.getuid?.() === 0 && process.platform === "linux";
test.skipIf((command === null || !canMount) && !process.env.REQUIRE_TOOLS)(
  "a disk of 60 MB that is really full: told, nothing kept is lost, and it recovers",
  async (context_) => {
    const disk = smallDisk(60);
    if (disk === null) return context_.skip("this machine mounts no disk in memory");
    const address = await pageFile(folder);
    let context = await launch(join(disk, "profile"));
    try {
      let page = await context.newPage();
      await page.goto(address);
      await call(page, "begin", "c1");
      const told: string[] = [];
      const acked: number[] = [];
      const lettersOf = (n: number) => 20_000 + ((n * 7919) % 250_000);
      const save = async (n: number) => {
        const state = await call(page, "save", n, lettersOf(n));
        told.push(state.word === "not kept" ? state.why : state.word);
        if (state.word === "kept") acked.push(n);
        return state.word;
      };
      let n = 1;
      for (; n <= 5; n++) expect(await save(n)).toBe("kept");
      // Full, room, full, room: the database was seen to be thrown away by the browser after the second time.
      const ballast = join(disk, "ballast");
      for (let round = 0; round < 3; round++) {
        fillUp(disk, ballast);
        let refused = 0;
        for (let i = 0; i < 3; i++) if ((await save(n++)) !== "kept") refused += 1;
        expect(refused, `told: ${told}`).toBeGreaterThan(0);
        rmSync(ballast);
        // What waits is the newest that was given.
        if ((await call(page, "state")).word === "not kept") {
          expect((await call(page, "retry")).word, `round ${round}, after room returned`).toBe("kept");
          acked.push(n - 1);
        }
        for (let i = 0; i < 2; i++) expect(await save(n++), `round ${round}`).toBe("kept");
        const there = (await call(page, "generations")).filter((g) => !g.damaged).map((g) => Number(g.note));
        expect(there, `round ${round}, told: ${told}`).toEqual(expect.arrayContaining(acked.slice(-3)));
      }
      for (let start = 0; start < 2; start++) {
        await context.close();
        context = await launch(join(disk, "profile"));
        page = await context.newPage();
        await page.goto(address);
        const begun = await call(page, "begin", "c1");
        expect([null, "rescued"]).toContain(begun.trouble);
        console.log(`full disk: ${told.join(", ")}; opened afterwards: ${begun.trouble ?? "as it was"}`);
        expect(await call(page, "isWhole", acked.at(-1)!, lettersOf(acked.at(-1)!))).toBe(true);
        const there = (await call(page, "generations")).filter((g) => !g.damaged).map((g) => Number(g.note));
        expect(there, `start ${start}`).toEqual(expect.arrayContaining(acked.slice(-3)));
        expect(await save(n++)).toBe("kept");
      }
    } finally {
      await context.close();
      execFileSync("umount", ["-l", disk]);
    }
  },
);
