// Who writes: over an imitated lock manager and hand-moved time.
import { expect, test } from "vitest";
import { browser } from "./tabs.fixture.ts";
import { type Locks, type Seat, seatTimes, takeSeat } from "./writerSeat.ts";

/** Sits a tab down and notes what it is told. */
function sitDown(all: ReturnType<typeof browser>, tab: string, handOver: () => Promise<void> = async () => {}) {
  const heard: string[] = [];
  const seat = takeSeat("class", all.between(tab), {
    onSeat: (writes) => void heard.push(writes ? "writes" : "follows"),
    onKept: () => void heard.push("kept"),
    handOver: async () => {
      heard.push("hands over");
      await handOver();
    },
  });
  return { heard, seat };
}
async function seated(all: ReturnType<typeof browser>, asked: Promise<Seat>, ms = 3000): Promise<Seat> {
  let seat: Seat | null = null;
  void asked.then((s) => {
    seat = s;
  });
  for (let i = 0; i < ms && seat === null; i += 10) await all.move(10);
  return seat!;
}

test("the first tab writes, the second follows at once and hears what is kept", async () => {
  const all = browser();
  const a = sitDown(all, "a");
  expect((await seated(all, a.seat)).writes).toBe(true);
  const before = all.now();
  const b = sitDown(all, "b");
  expect((await seated(all, b.seat)).writes).toBe(false);
  expect(all.now() - before).toBeLessThan(seatTimes.answer);
  (await a.seat).tellKept();
  await all.move(10);
  expect(b.heard).toEqual(["kept"]);
});
test("taking over: the writer finishes its save first, then follows; and back again", async () => {
  const all = browser();
  let finish = () => {};
  const a = sitDown(
    all,
    "a",
    () =>
      new Promise((go) => {
        finish = go;
      }),
  );
  const first = await seated(all, a.seat);
  const b = sitDown(all, "b");
  const second = await seated(all, b.seat);
  const took = second.takeOver();
  await all.move(50);
  expect([first.writes, second.writes]).toEqual([false, false]);
  finish();
  await all.move(50);
  expect(await took).toBe(true);
  expect([first.writes, second.writes]).toEqual([false, true]);
  expect(a.heard).toEqual(["hands over", "follows"]);
  const back = first.takeOver();
  await all.move(50);
  expect(await back).toBe(true);
  expect([first.writes, second.writes]).toEqual([true, false]);
});
test("a writer that does not answer loses its seat within 2 s", async () => {
  const all = browser();
  const a = sitDown(all, "a");
  const first = await seated(all, a.seat);
  const b = sitDown(all, "b");
  const second = await seated(all, b.seat);
  all.freeze("a");
  const before = all.now();
  const took = second.takeOver();
  while (!second.writes && all.now() - before < 3000) await all.move(10);
  expect(await took).toBe(true);
  expect(all.now() - before).toBeLessThan(2000);
  expect([first.writes, second.writes]).toEqual([false, true]);
});
test("when the writer's tab goes, one that follows becomes the writer by itself", async () => {
  const all = browser();
  const [a, b, c] = [sitDown(all, "a"), sitDown(all, "b"), sitDown(all, "c")];
  const seats = [await seated(all, a.seat), await seated(all, b.seat), await seated(all, c.seat)];
  seats[0]!.leave();
  await all.move(20);
  expect(seats.map((s) => s.writes).filter(Boolean).length).toBe(1);
  expect(seats[0]!.writes).toBe(false);
});
test("a third tab that waits in the queue does not slip in between", async () => {
  const all = browser();
  const [a, b, c] = [sitDown(all, "a"), sitDown(all, "b"), sitDown(all, "c")];
  const seats = [await seated(all, a.seat), await seated(all, b.seat), await seated(all, c.seat)];
  const took = seats[2]!.takeOver();
  await all.move(100);
  expect(await took).toBe(true);
  expect(seats.map((s) => s.writes)).toEqual([false, false, true]);
  expect(b.heard).not.toContain("writes");
});
test("a lock that is not free at once after a tab closed is waited for quietly", async () => {
  const all = browser();
  // Somebody holds it who answers nobody, and lets go after a third of a second.
  let letGo = () => {};
  void all.between("ghost").locks!.request(
    "class",
    {},
    () =>
      new Promise<void>((go) => {
        letGo = go;
      }),
  );
  await all.move(10);
  const a = sitDown(all, "a");
  await all.move(340);
  letGo();
  const seat = await seated(all, a.seat);
  expect(seat.writes).toBe(true);
  expect(all.now()).toBeLessThan(1000);
});
test("one who asked for the seat and vanished does not leave the class without a writer", async () => {
  const all = browser();
  const a = sitDown(all, "a");
  const first = await seated(all, a.seat);
  const channel = all.between("ghost").channel!("class");
  channel.postMessage({ say: "want", from: "ghost" });
  await all.move(100);
  expect(first.writes).toBe(false);
  await all.move(seatTimes.relief + 100);
  expect(first.writes).toBe(true);
});
test("without locks everybody may write: the look at the top generation keeps the order", async () => {
  const seat = await takeSeat(
    "class",
    { tab: "a", locks: null, channel: null, after: () => () => {} },
    {
      onSeat: () => {},
      onKept: () => {},
      handOver: async () => {},
    },
  );
  expect([seat.writes, await seat.takeOver()]).toEqual([true, true]);
});
test("a browser that refuses locks is as one without", async () => {
  const locks: Locks = { request: () => Promise.reject(Object.assign(new Error(""), { name: "SecurityError" })) };
  const seat = await takeSeat(
    "class",
    { tab: "a", locks, channel: null, after: () => () => {} },
    {
      onSeat: () => {},
      onKept: () => {},
      handOver: async () => {},
    },
  );
  expect(seat.writes).toBe(true);
});
