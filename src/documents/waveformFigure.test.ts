// A waveform on paper. Expected: the places of edges and levels by the scale, counted by hand; 1-2-5 divisions.
import { expect, test } from "vitest";
import type { Trace, TracedProbe, TracePoint } from "../bench/rehearsal/index.ts";
import { languageFor } from "../language/index.ts";
import { htmlText } from "./html.ts";
import { waveformFigure } from "./waveformFigure.ts";

const english = languageFor("en");
const size = { width: 100, height: 50, letter: 2.5 };
// The frame inside it: letters are 2.5 mm, so left 11, right 98.5, top 4.75, bottom 45.75.
const [left, right, top, bottom] = [11, 98.5, 4.75, 45.75];

function figureOf(points: readonly TracePoint[], unit: "V" | "A" = "V", toMs = 10, gaps: TracedProbe["gaps"] = []): string {
  const values = points.map(([, v]) => v);
  const probe: TracedProbe = {
    at: { part: "board", leg: "D9" },
    unit,
    points,
    gaps,
    least: Math.min(...values),
    most: Math.max(...values),
  };
  const trace: Trace = { lesson: "x", fromMs: 0, toMs, probes: [probe], problems: [] };
  // A number and its unit do not break.
  return htmlText(waveformFigure(trace, probe, english, size)).replaceAll("\u00a0", " ");
}
/** Corners of the curves, mm. */
const curves = (svg: string) =>
  [...svg.matchAll(/class="curve" d="([^"]*)"/g)].map(([, d = ""]) =>
    [...d.matchAll(/[ML]([\d.-]+) ([\d.-]+)/g)].map(([, x, y]) => [Number(x), Number(y)]),
  );

test("a pulse of 5 V from 2 ms to 6 ms stands where the divisions say", () => {
  const svg = figureOf([
    [0, 0],
    [0.002, 0],
    [0.002, 5],
    [0.006, 5],
    [0.006, 0],
    [0.01, 0],
  ]);
  expect(svg).toContain("D9: 1 V and 1 ms a division");
  const at = (ms: number) => left + ((right - left) * ms) / 10;
  const expected = [
    [at(0), bottom],
    [at(2), bottom],
    [at(2), top],
    [at(6), top],
    [at(6), bottom],
    [at(10), bottom],
  ];
  const [curve = []] = curves(svg);
  expect(curve.length).toBe(expected.length);
  for (const [i, [x = 0, y = 0]] of expected.entries()) {
    expect(curve[i]?.[0]).toBeCloseTo(x, 1);
    expect(curve[i]?.[1]).toBeCloseTo(y, 1);
  }
});

const scales: [name: string, most: number, unit: "V" | "A", toMs: number, words: string][] = [
  ["an LED's current", 0.0122, "A", 20, "D9 A: 2 mA and 2 ms a division"],
  ["a sag of a supply", 4.7, "V", 50, "D9: 1 V and 5 ms a division"],
  ["a long one", 3.3, "V", 5000, "D9: 500 mV and 500 ms a division"],
];
for (const [name, most, unit, toMs, words] of scales)
  test(`${name}: ${words}`, () =>
    expect(
      figureOf(
        [
          [0, 0],
          [toMs / 1000, most],
        ],
        unit,
        toMs,
      ),
    ).toContain(words));

test("what is too fast for lines is a box as tall as the curve", () => {
  const points = Array.from({ length: 8000 }, (_, i): TracePoint => [i / 800_000, (i >> 1) % 2 === 0 ? 0 : 4]);
  const svg = figureOf(points);
  expect(svg).toContain('class="fast"');
  const y = (volts: number) => Number((bottom - ((bottom - top) * volts) / 4).toFixed(2));
  expect(svg).toContain(`V${y(0)}H`);
});

test("nothing is drawn over a stretch in which nothing holds the net", () => {
  const svg = figureOf(
    [
      [0, 1],
      [0.003, 1],
      [0.006, 2],
      [0.01, 2],
    ],
    "V",
    10,
    [[0.003, 0.006]],
  );
  expect(curves(svg).map((c) => c.length)).toEqual([2, 2]);
});
