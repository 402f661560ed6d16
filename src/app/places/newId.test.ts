// New ids: fit for a class file and never one that is there.
import { expect, test } from "vitest";
import { isId } from "../../school/file/index.ts";
import { newClassId, newId } from "./newId.ts";

const newThing = (name: string, taken: readonly string[]) => newId(name, taken, "shop");
const cases: [make: typeof newClassId, name: string, taken: string[], id: string][] = [
  [newThing, "led red 20", [], "led-red-20"],
  [newThing, "led red 20", ["led-red-20"], "led-red-20-2"],
  [newThing, "Électro & Cie.", [], "electro-cie"],
  [newThing, "متجر", [], "shop"],
  [newThing, "متجر", ["shop", "shop-2"], "shop-3"],
  [newThing, "<img src=x>", [], "img-src-x"],
  [newThing, `${"a".repeat(39)} b`, [], "a".repeat(39)],
  [newClassId, "Class 7c", ["7b"], "7c"],
  [newClassId, "Class 7b", ["7b"], "7b-2"],
  [newClassId, "Klasse 7 b", [], "7"],
  [newClassId, "Évaluation", [], "evaluation"],
  [newClassId, "فصل", [], "class"],
  [newClassId, "فصل", ["class", "class-2"], "class-3"],
  [newClassId, "<script>alert(1)</script>", [], "1"],
  [newClassId, "", [], "class"],
];
for (const [make, name, taken, id] of cases)
  test(`${make === newClassId ? "class" : "thing"} “${name}”, ${taken.length} taken`, () => {
    expect(make(name, taken)).toBe(id);
    expect(isId(id)).toBe(true);
  });
