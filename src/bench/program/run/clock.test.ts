// The clock against the chip's counter, stepped overflow by overflow, and the order in which the world is told of moments.
//
// Timer 0 at a 64th of 16 MHz overflows every 1024 µs, so a millisecond counter adds 24 µs of carry each time; 2^32 ms are 49 d
// 17 h 2 min 47.296 s, 2^32 µs 71.58 min (arithmetic).
import { expect, test } from "vitest";
import type { BoardPort } from "../port.ts";
import { Clock } from "./clock.ts";
import { Halt } from "./halt.ts";

function port(events: number[], told: string[], verdict: "go on" | "stop" | "reset" = "go on"): BoardPort {
  return {
    nextEvent: () => events[0] ?? Number.POSITIVE_INFINITY,
    reach: (now) => {
      told.push(`reach ${now}`);
      events.shift();
      return verdict;
    },
  } as BoardPort;
}
const quiet = () => new Clock(port([], []), Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY);

test("millis counts as the overflows do", () => {
  const clock = quiet();
  let millis = 0;
  let carry = 0;
  for (let overflow = 1; overflow <= 5000; overflow += 1) {
    millis += 1;
    carry += 24;
    if (carry >= 1000) {
      carry -= 1000;
      millis += 1;
    }
    clock.time[0] = overflow * 1024 * 16;
    expect(clock.millis()).toBe(millis);
    clock.time[0] = (overflow + 1) * 1024 * 16 - 1;
    expect(clock.millis()).toBe(millis);
  }
});

test("the moment at which millis will have counted further is the first such moment", () => {
  const clock = quiet();
  for (let n = 0; n < 400; n += 1) {
    clock.time[0] = n * 12345;
    const before = clock.millis();
    for (const more of [1, 2, 3, 40, 41, 42, 43, 1000]) {
      const at = clock.whenMillis(more);
      clock.time[0] = at;
      expect(clock.millis()).toBeGreaterThanOrEqual(before + more);
      clock.time[0] = at - 1;
      expect(clock.millis()).toBeLessThan(before + more);
      clock.time[0] = n * 12345;
    }
  }
});

test("micros counts in fours, and wraps after 71.58 minutes", () => {
  const clock = quiet();
  clock.time[0] = 63;
  expect(clock.micros()).toBe(0);
  clock.time[0] = 64;
  expect(clock.micros()).toBe(4);
  clock.time[0] = clock.whenMicros(100);
  expect(clock.micros()).toBe(104);
  clock.time[0] = 2 ** 32 * 16;
  expect(clock.micros()).toBe(0);
  clock.time[0] = 2 ** 32 * 16 - 1;
  expect(clock.micros() >>> 0).toBe(2 ** 32 - 4);
});

test("millis wraps after 49 days 17 h 2 min 47.296 s", () => {
  const clock = quiet();
  const wrap = ((49 * 24 + 17) * 3600 + 2 * 60 + 47.296) * 1000;
  clock.time[0] = (wrap - 3) * 16000;
  expect(clock.millis() >>> 0).toBeGreaterThan(4294967000);
  clock.time[0] = (wrap + 3) * 16000;
  expect(clock.millis() >>> 0).toBeLessThan(10);
});

test("a wait tells every moment on its way, at that moment, and ends where it should", () => {
  const told: string[] = [];
  const clock = new Clock(port([100, 100, 250.5, 9000], told), Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY);
  clock.afterReach = () => told.push(`at ${clock.now()}`);
  clock.wait(1000 * 16);
  expect(clock.now()).toBe(1000);
  expect(told).toEqual(["reach 100", "at 100", "reach 100", "at 100", "reach 250.5", "at 250.5"]);
});

test("alarms ring between the moments of the world, and not after a restart", () => {
  const told: string[] = [];
  const clock = new Clock(port([300], told), Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY);
  clock.setAlarm(400 * 16, () => told.push("alarm 400"));
  clock.setAlarm(200 * 16, () => told.push("alarm 200"));
  clock.wait(500 * 16);
  clock.setAlarm(600 * 16, () => told.push("never"));
  clock.restart(0);
  clock.wait(500 * 16);
  expect(told).toEqual(["alarm 200", "reach 300", "alarm 400"]);
});

const ends: [what: string, verdict: "stop" | "reset", why: string][] = [
  ["a port that stops", "stop", "stop"],
  ["a port that resets", "reset", "reset"],
];
for (const [what, verdict, why] of ends) {
  test(`${what} ends the code at that moment`, () => {
    const clock = new Clock(port([70], [], verdict), Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY);
    let halt: unknown = null;
    try {
      clock.wait(1e6);
    } catch (thrown) {
      halt = thrown;
    }
    expect(halt).toBeInstanceOf(Halt);
    expect((halt as Halt).reason.why).toBe(why);
    expect(clock.now()).toBe(70);
  });
}

test("the run ends at its end, and too much work ends it before, but not while it waits", () => {
  const clock = new Clock(port([], []), 1000 * 16, 100);
  expect(() => clock.wait(2000 * 16)).toThrow(Halt);
  expect(clock.now()).toBe(1000);
  const busy = new Clock(port([], []), Number.POSITIVE_INFINITY, 100);
  busy.wait(5000);
  busy.spend(90);
  busy.look(7);
  busy.spend(20);
  busy.sync();
  expect(busy.time[0]! >= busy.time[1]!).toBe(true);
  expect(() => busy.look(7)).toThrow(Halt);
});
