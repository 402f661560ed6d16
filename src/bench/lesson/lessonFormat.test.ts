// Versions of the format: which are known, and that the list is in order and complete.
import { expect, test } from "vitest";
import { currentFormat, formatVersions, migrate, readFormat } from "./lessonFormat.ts";

const formats: [format: unknown, outcome: object][] = [
  [currentFormat, { status: "known", version: formatVersions.length }],
  ["benchday-lesson/2", { status: "newer", version: 2 }],
  ["benchday-lesson/9999", { status: "newer", version: 9999 }],
  ["benchday-lesson/0", { status: "unknown" }],
  ["benchday-lesson/1.5", { status: "unknown" }],
  ["benchday-class/1", { status: "unknown" }],
  ["", { status: "unknown" }],
  [1, { status: "unknown" }],
  [null, { status: "unknown" }],
];
for (const [format, outcome] of formats) test(`${format}`, () => expect(readFormat(format)).toEqual(outcome));

test("every version after the first says how it comes from the one before", () => {
  expect(formatVersions.map((f) => f.version)).toEqual(formatVersions.map((_, i) => i + 1));
  for (const { version, fromBefore } of formatVersions) expect(fromBefore === null).toBe(version === 1);
});
test("data of the present version stay as they are", () => {
  const data = { id: "x" };
  expect(migrate(data, formatVersions.length)).toBe(data);
});
