// Scales and edges of curves; expected values by hand.
import { expect, test } from "vitest";
import type { TracePoint } from "../../../bench/rehearsal/index.ts";
import { roundStep, scaleLines, waveScale, waveShape } from "../../../documents/index.ts";
import { repeatsOf, waveEdges } from "./waveEdges.ts";

const scales: [least: number, most: number, step: number, low: number, high: number][] = [
  [0, 5, 1, 0, 5],
  [0, 4.7, 1, 0, 5],
  [0, 0.0122, 0.002, 0, 0.014],
  [-0.5, 5, 1, -1, 5],
  [2.4, 2.6, 0.5, 0, 3],
  [0, 12, 2, 0, 12],
  [-12, -3, 2, -12, 0],
];
for (const [least, most, step, low, high] of scales)
  test(`from ${least} to ${most}: ${step} a division`, () => expect(waveScale(least, most)).toEqual({ step, low, high }));

test("a scale has at most 8 divisions, holds its values and zero, and is not more than twice too large", () => {
  for (let n = -60; n <= 60; n += 1)
    for (const sign of [1, -1]) {
      const value = sign * 1.17 ** n;
      const scale = waveScale(Math.min(value, value / 3), Math.max(value, value / 3));
      const { step, low, high } = scale;
      expect(low).toBeLessThanOrEqual(Math.min(0, value) * (1 - 1e-5));
      expect(high).toBeGreaterThanOrEqual(Math.max(0, value) * (1 - 1e-5));
      expect(scaleLines(scale).length).toBeLessThanOrEqual(9);
      expect(high - low).toBeLessThanOrEqual(Math.abs(value) * 2.1 + step);
    }
});

test("a close look at a supply that sags by 0.2 V", () => {
  expect(waveScale(4.71, 4.93, true)).toEqual({ step: 0.05, low: 4.7, high: 4.95 });
  expect(waveScale(5, 5, true)).toEqual({ step: 0.01, low: 5, high: 5.01 });
});

test("steps are 1, 2 or 5", () => expect([0.9, 1, 1.1, 2.4, 6, 0.0003].map(roundStep)).toEqual([1, 1, 2, 5, 10, 0.0005]));

/** 490 Hz, a quarter high: rises at 0, 2, 4 … of a period of 2. */
const pulses: TracePoint[] = [0, 2, 4, 6].flatMap((t): TracePoint[] => [
  [t, 0],
  [t, 5],
  [t + 0.5, 5],
  [t + 0.5, 0],
]);

test("jumps are listed, ripples are not, and the rhythm is found", () => {
  const edges = waveEdges([...pulses, [7, 0], [7, 0.1]], 5);
  expect(edges.slice(0, 3)).toEqual([
    { at: 0, from: 0, to: 5 },
    { at: 0.5, from: 5, to: 0 },
    { at: 2, from: 0, to: 5 },
  ]);
  expect(edges).toHaveLength(8);
  expect(repeatsOf(edges)).toEqual({ period: 2, duty: 0.25 });
  expect(repeatsOf(edges.slice(0, 4))).toBeNull();
  expect(repeatsOf([...edges, { at: 11, from: 0, to: 5 }])).toBeNull();
});

test("what is slow is drawn as lines, what is too fast as one box between its least and its most", () => {
  const fast: TracePoint[] = Array.from({ length: 400 }, (_, n): TracePoint => [8 + n / 200, n % 2 === 0 ? 0 : 5]);
  expect(waveShape(pulses, [], 40)).toEqual({ lines: [pulses], boxes: [] });
  const after: TracePoint[] = [[14, 5]];
  const { lines, boxes } = waveShape([...pulses, ...fast, ...after], [], 40);
  // The curve goes on without a hole, into the box and out of it.
  expect(lines).toEqual([
    [...pulses, fast[0]],
    [fast.at(-1), after[0]],
  ]);
  expect(boxes).toEqual([{ from: 8, to: fast.at(-1)![0], least: 0, most: 5 }]);
});

test("no line is drawn over a stretch without a value", () => {
  const list: TracePoint[] = [
    [0, 1],
    [1, 1],
    [3, 2],
    [4, 2],
  ];
  expect(waveShape(list, [[1, 3]], 40).lines).toEqual([list.slice(0, 2), list.slice(2)]);
});
