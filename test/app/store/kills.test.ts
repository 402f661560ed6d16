// Reliability test R1: the browser is killed in the middle of saves, and nothing that was called kept is lost.
//
// Each life starts on the profile that the last kill left: it looks first, then keeps text after text until every process of the
// browser is killed. What was called kept is written down here, outside the browser. A new profile every 50 kills.
import { afterAll, expect, test } from "vitest";
import { sample } from "../../sample.ts";
import { call, command, drop, newFolder, pageFile, startKillable, wait } from "./browser.ts";
import { luckOf } from "./simulatedDisk.ts";

const kills = sample(30, 1000);
const killsOfProfile = 50;
const folder = newFolder("kills");
afterAll(() => drop(folder));

interface Tally {
  kills: number;
  acknowledged: number;
  underWay: number;
  rescued: number;
  slowestOpening: number;
  readonly times: number[];
  readonly faults: string[];
}

/** One profile through so many kills; after the last one it is only looked at. */
async function lives(address: string, count: number, luck: () => number, tally: Tally): Promise<void> {
  const profile = newFolder("profile");
  const acked: number[] = [];
  for (let life = 0; life <= count; life++) {
    const where = `kill ${tally.kills}`;
    const browser = await startKillable(profile);
    try {
      const { page } = browser;
      await page.exposeFunction("ack", (n: number, ms: number) => {
        acked.push(n);
        tally.times.push(ms);
        tally.acknowledged += 1;
      });
      await page.goto(address);
      const start = Date.now();
      const begun = await call(page, "begin", "c1");
      tally.slowestOpening = Math.max(tally.slowestOpening, Date.now() - start);
      const there = await call(page, "look");
      const newest = acked.at(-1) ?? 0;
      const found = begun.found === null ? 0 : Number.parseInt(begun.found, 10);
      if (found < newest) tally.faults.push(`${where}: ${newest} was called kept, ${found} is there`);
      if (found > newest) tally.underWay += 1;
      if (begun.trouble === "rescued") tally.rescued += 1;
      else if (begun.trouble ?? begun.storeTrouble) tally.faults.push(`${where}: ${begun.trouble} ${begun.storeTrouble}`);
      for (const g of there) if (g.damaged || !g.isWhole) tally.faults.push(`${where}: generation ${g.note} is torn`);
      const notes = new Set(there.map((g) => Number(g.note)));
      for (const n of acked.slice(-10)) if (!notes.has(n)) tally.faults.push(`${where}: ${n} was called kept and is gone`);
      if (life === count) break;
      await call(page, "saveOn", Math.max(found, newest) + 1);
      await wait(150 + luck() * 450);
      tally.kills += 1;
    } finally {
      browser.kill();
      await browser.release();
    }
  }
  drop(profile);
}

test.skipIf(command === null && !process.env.REQUIRE_TOOLS)(
  `${kills} kills of the browser in the middle of saves lose nothing that was called kept`,
  async () => {
    const address = await pageFile(folder);
    const luck = luckOf(20261125);
    const tally: Tally = { kills: 0, acknowledged: 0, underWay: 0, rescued: 0, slowestOpening: 0, times: [], faults: [] };
    while (tally.kills < kills) await lives(address, Math.min(killsOfProfile, kills - tally.kills), luck, tally);
    tally.times.sort((a, b) => a - b);
    console.log(
      `kills: ${tally.kills}, saves called kept: ${tally.acknowledged}, faults: ${tally.faults.length}, ` +
        `whole saves found that nobody had called kept: ${tally.underWay}, ` +
        `openings from the spare copy: ${tally.rescued}, ` +
        `median save ${tally.times[tally.times.length >> 1]?.toFixed(0)} ms, slowest opening ${tally.slowestOpening} ms`,
    );
    expect(tally.faults).toEqual([]);
    expect(tally.acknowledged).toBeGreaterThan(kills);
    expect(tally.slowestOpening).toBeLessThan(2000);
  },
  sample(300_000, 36_000_000),
);
