// New ids: fit for a class file and never one that is there.
import { expect, test } from "vitest";
import { isId } from "../../../school/file/index.ts";
import { newId } from "./newId.ts";

const cases: [name: string, taken: string[], id: string][] = [
  ["led red 20", [], "led-red-20"],
  ["led red 20", ["led-red-20"], "led-red-20-2"],
  ["Électro & Cie.", [], "electro-cie"],
  ["متجر", [], "shop"],
  ["متجر", ["shop", "shop-2"], "shop-3"],
  ["<img src=x>", [], "img-src-x"],
  [`${"a".repeat(39)} b`, [], "a".repeat(39)],
];
for (const [name, taken, id] of cases)
  test(`“${name}”`, () => {
    expect(newId(name, taken, "shop")).toBe(id);
    expect(isId(id)).toBe(true);
  });
