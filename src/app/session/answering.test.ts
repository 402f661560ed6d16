// An answer while the class changes: what was asked before a change is never called fresh after it.
import { expect, test } from "vitest";
import type { Job, School } from "../engine/engine.ts";
import { answering } from "./answering.ts";

const school = {} as School;

/** An engine whose answers are given by hand. */
function byHand() {
  const give: ((value: string) => void)[] = [];
  const start = (): Job<string> => ({
    answer: new Promise<string>((resolve) => {
      give.push(resolve);
    }),
    stop: () => {},
  });
  return { give, asking: answering<string>(start, () => 0) };
}
const settled = () => new Promise((resolve) => setTimeout(resolve));

const cases: [what: string, does: (hand: ReturnType<typeof byHand>) => void, value: string | null, fresh: boolean][] = [
  [
    "asked and answered",
    ({ asking, give }) => {
      asking.ask(school);
      give[0]?.("one");
    },
    "one",
    true,
  ],
  [
    "changed while it is worked out",
    ({ asking, give }) => {
      asking.ask(school);
      asking.grow();
      give[0]?.("old");
    },
    "old",
    false,
  ],
  [
    "changed and asked again",
    ({ asking, give }) => {
      asking.ask(school);
      asking.grow();
      asking.ask(school);
      give[0]?.("old");
      give[1]?.("new");
    },
    "new",
    true,
  ],
  [
    "stopped: a late answer is not taken",
    ({ asking, give }) => {
      asking.ask(school);
      asking.stop();
      give[0]?.("late");
    },
    null,
    false,
  ],
  [
    "another class",
    ({ asking, give }) => {
      asking.ask(school);
      asking.clear();
      give[0]?.("of the other");
    },
    null,
    false,
  ],
];
for (const [what, does, value, fresh] of cases)
  test(what, async () => {
    const hand = byHand();
    does(hand);
    await settled();
    expect(hand.asking.answer.value).toMatchObject({ value, fresh });
  });
