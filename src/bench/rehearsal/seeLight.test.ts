// What the eye makes of a current that changes. Expected: 50 a second is the border of what is seen (common practice), the bands
// are those of bench/parts, means are computed by hand.
import { expect, test } from "vitest";
import type { Run } from "./run.ts";
import { bandOf, seeLight } from "./seeLight.ts";
import { gatherBlinking, measureBlinking } from "./steadiness.ts";
import type { Point } from "./table.ts";

const bands = { dimAmps: 0.00005, litAmps: 0.001, tooBrightAmps: 0.02 };
const light = { sense: "light" as const, ...bands, source: "test" };

/** A run in which LED1 carries these currents (mA) for these times (ms), over and over until the end. */
function runOf(end: number, turns: readonly (readonly [ms: number, milliamps: number])[]): Run {
  const segments: Run["segments"][number][] = [];
  let from = 0;
  for (let i = 0; from < end - 1e-12; i += 1) {
    const [ms, milliamps] = turns[i % turns.length]!;
    const to = Math.min(end, from + ms / 1000);
    const point = { amps: () => milliamps / 1000 } as unknown as Point;
    segments.push({
      from,
      to,
      scene: { phases: [{ share: 1, point, state: {} as never }], switching: [], states: new Map(), on: true },
    });
    from = to;
  }
  return { segments, end } as unknown as Run;
}

const seen = (end: number, turns: readonly (readonly [number, number])[]) => seeLight("LED1", light, runOf(end, turns));

const borders: [milliamps: number, band: string][] = [
  [0, "dark"],
  [0.049, "dark"],
  [0.05, "dim"],
  [0.99, "dim"],
  [1, "lit"],
  [19.9, "lit"],
  [20, "too bright"],
  [-5, "dark"],
];
for (const [milliamps, band] of borders)
  test(`${milliamps} mA is ${band}`, () => expect(bandOf(milliamps / 1000, bands)).toBe(band));

const steady: [name: string, turns: [number, number][], band: string, milliamps: number][] = [
  [
    "500 Hz, half of 12 mA",
    [
      [1, 12],
      [1, 0],
    ],
    "lit",
    6,
  ],
  [
    "100 Hz, a tenth of 12 mA",
    [
      [1, 12],
      [9, 0],
    ],
    "lit",
    1.2,
  ],
  [
    "100 Hz, a hundredth of 12 mA",
    [
      [0.1, 12],
      [9.9, 0],
    ],
    "dim",
    0.12,
  ],
  [
    "62.5 Hz is still steady",
    [
      [8, 10],
      [8, 0],
    ],
    "lit",
    5,
  ],
  [
    "too much at half the time is not too much",
    [
      [1, 30],
      [1, 0],
    ],
    "lit",
    15,
  ],
];
for (const [name, turns, band, milliamps] of steady)
  test(name, () => {
    const spans = seen(2, turns);
    expect(spans.map((s) => s.seen)).toEqual([band]);
    expect(spans[0]?.figures.amps).toBeCloseTo(milliamps / 1000, 4);
  });

test("40 Hz is seen to flicker", () => {
  const spans = seen(1, [
    [12.5, 10],
    [12.5, 0],
  ]);
  expect(spans.length).toBeGreaterThan(70);
  expect(measureBlinking(spans, 0, 1)?.hertz).toBeCloseTo(40, 6);
});

test("a gap of 5 µs is not seen, a flash of 5 µs neither", () => {
  expect(
    seen(1, [
      [400, 10],
      [0.005, 0],
      [2000, 10],
    ]).map((s) => s.seen),
  ).toEqual(["lit"]);
  expect(
    seen(1, [
      [400, 0],
      [0.005, 10],
      [2000, 0],
    ]).map((s) => s.seen),
  ).toEqual(["dark"]);
});
test("a single flash of 5 ms at 10 mA is seen: spread over 20 ms it is 2.5 mA", () => {
  expect(
    seen(1, [
      [400, 0],
      [5, 10],
      [2000, 0],
    ]).map((s) => s.seen),
  ).toEqual(["dark", "lit", "dark"]);
});
test("fading is seen in steps of a look, not as one mean", () => {
  // 4 ms turns whose share grows from nothing to all within a second.
  const turns: [number, number][] = Array.from(
    { length: 250 },
    (_, i) =>
      [
        [(4 * i) / 250, 10],
        [4 - (4 * i) / 250, 0],
      ] as [number, number][],
  )
    .flat()
    .filter(([ms]) => ms > 0);
  const spans = seen(1, turns);
  expect(spans.map((s) => s.seen)).toEqual(["dim", "lit"]);
  // Dim is reached after 5 ms, which is less than a look. 1 mA of 10 mA is a tenth of the turn, reached after a tenth of a second.
  expect(Math.abs((spans[1]?.from ?? 0) - 0.1)).toBeLessThan(0.025);
});

const blinking: [name: string, turns: [number, number][], from: number, to: number, hertz: number, duty: number][] = [
  [
    "1 Hz, half lit",
    [
      [500, 10],
      [500, 0],
    ],
    0,
    5,
    1,
    0.5,
  ],
  [
    "2 Hz, a fifth lit",
    [
      [100, 10],
      [400, 0],
    ],
    0,
    5,
    2,
    0.2,
  ],
  [
    "measured over whole turns only",
    [
      [300, 10],
      [700, 0],
    ],
    0.5,
    4.9,
    1,
    0.3,
  ],
];
for (const [name, turns, from, to, hertz, duty] of blinking)
  test(name, () => {
    const measured = measureBlinking(seen(6, turns), from, to);
    expect(measured?.hertz).toBeCloseTo(hertz, 6);
    expect(measured?.duty).toBeCloseTo(duty, 6);
  });
test("two flashes are no blinking, three are", () => {
  const spans = seen(3.2, [
    [500, 10],
    [500, 0],
  ]);
  expect(measureBlinking(spans, 0, 1.6)).toBeNull();
  expect(measureBlinking(spans, 0, 2.6)?.hertz).toBeCloseTo(1, 6);
});

test("even blinking is told once, and what follows it by itself", () => {
  const group: [number, number][] = [
    ...Array.from(
      { length: 5 },
      () =>
        [
          [500, 10],
          [500, 0],
        ] as [number, number][],
    ).flat(),
    [5000, 0],
  ];
  const told = gatherBlinking(seen(10, group));
  expect(told.map((s) => [s.from, s.seen])).toEqual([
    [0, "blinking"],
    [4.5, "dark"],
  ]);
});
