// Lessons in the order in which they can be taught.
import { expect, test } from "vitest";
import { teachingOrder } from "./teachingOrder.ts";

const cases: [name: string, needs: Record<string, string[]>, order: string][] = [
  ["none", {}, ""],
  ["one after the other", { barrier: ["lamp"], house: [], lamp: ["house"] }, "house lamp barrier"],
  ["free ones keep their order", { b: [], a: [] }, "b a"],
  ["two before one", { c: ["a", "b"], b: [], a: [] }, "b a c"],
  ["a lesson that is not there holds nothing up", { a: ["gone"], b: [] }, "a b"],
  ["a ring is taken as it stands", { a: ["b"], b: ["a"], c: [] }, "c a b"],
];
for (const [name, needs, order] of cases)
  test(name, () =>
    expect(teachingOrder(new Map(Object.entries(needs).map(([id, list]) => [id, { needs: list }]))).join(" ")).toBe(order),
  );
