// Asking the engine: the newest question wins, whatever order the answers come in.
import { expect, test } from "vitest";
import { EngineBroken, type Job, type OnProgress, Stopped } from "../../engine/engine.ts";
import { makeAsking } from "./makeAsking.ts";

/** An engine in the hand of the test: each question waits until the test answers it. */
function engine() {
  const open: {
    question: string;
    give: (value: string) => void;
    fail: (fault: Error) => void;
    tell: OnProgress;
    stopped: boolean;
  }[] = [];
  const timers: (() => void)[] = [];
  const asking = makeAsking<string, string>(
    (question, tell): Job<string> => {
      let give: (value: string) => void = () => {};
      let fail: (fault: Error) => void = () => {};
      const answer = new Promise<string>((yes, no) => {
        give = yes;
        fail = no;
      });
      const entry = { question, give, fail, tell, stopped: false };
      open.push(entry);
      return {
        answer,
        stop: () => {
          entry.stopped = true;
          fail(new Stopped());
        },
      };
    },
    (_, then) => timers.push(then),
  );
  const settle = () => new Promise((done) => setTimeout(done, 0));
  const passASecond = () => {
    for (const then of timers.splice(0)) then();
  };
  return { asking, open, settle, passASecond };
}

const half = { done: 1, total: 2, doing: "rehearse" };

test("an answer is fresh until the next question; the old one stays readable", async () => {
  const { asking, open, settle } = engine();
  asking.ask("a");
  expect(asking.answer.value).toEqual({ value: null, fresh: false, progress: null, trouble: null });
  open[0]!.give("A");
  await settle();
  expect(asking.answer.value).toMatchObject({ value: "A", fresh: true });
  asking.ask("b");
  expect(asking.answer.value).toMatchObject({ value: "A", fresh: false });
});

test("a newer question stops the older one, and the late answer of the older is thrown away", async () => {
  const { asking, open, settle } = engine();
  asking.ask("a");
  asking.ask("b");
  expect(open.map(({ question, stopped }) => [question, stopped])).toEqual([
    ["a", true],
    ["b", false],
  ]);
  open[1]!.give("B");
  open[0]!.give("A");
  await settle();
  expect(asking.answer.value).toMatchObject({ value: "B", fresh: true, trouble: null });
});

test("the same question asks nothing, while it is asked and when it is answered", async () => {
  const { asking, open, settle } = engine();
  asking.ask("a");
  asking.ask("a");
  open[0]!.give("A");
  await settle();
  asking.ask("a");
  expect(open).toHaveLength(1);
});

test("progress is shown after a second only, and goes with the answer", async () => {
  const { asking, open, settle, passASecond } = engine();
  asking.ask("a");
  open[0]!.tell(half);
  expect(asking.answer.value.progress).toBe(null);
  passASecond();
  expect(asking.answer.value.progress).toEqual(half);
  open[0]!.give("A");
  await settle();
  expect(asking.answer.value.progress).toBe(null);
  open[0]!.tell(half);
  expect(asking.answer.value.progress).toBe(null);
});

const troubles: [name: string, fault: Error, trouble: string][] = [
  ["a stop", new Stopped(), "stopped"],
  ["a full memory", new EngineBroken("memory"), "memory"],
  ["a fault of ours", new Error("slip"), "broken"],
];
for (const [name, fault, trouble] of troubles)
  test(`${name} is told, what was known stays, and it can be asked again`, async () => {
    const { asking, open, settle } = engine();
    asking.ask("a");
    open[0]!.give("A");
    await settle();
    asking.ask("b");
    open[1]!.fail(fault);
    await settle();
    expect(asking.answer.value).toEqual({ value: "A", fresh: false, progress: null, trouble });
    asking.again();
    open[2]!.give("B");
    await settle();
    expect(asking.answer.value).toMatchObject({ value: "B", fresh: true, trouble: null });
  });
