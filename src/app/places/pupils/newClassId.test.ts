// Ids of new classes.
import { expect, test } from "vitest";
import { isId } from "../../../school/file/index.ts";
import { newClassId } from "./newClassId.ts";

const cases: [name: string, taken: string[], id: string][] = [
  ["Class 7c", ["7b"], "7c"],
  ["Class 7b", ["7b"], "7b-2"],
  ["Klasse 7 b", [], "7"],
  ["Évaluation", [], "evaluation"],
  ["فصل", [], "class"],
  ["فصل", ["class", "class-2"], "class-3"],
  ["<script>alert(1)</script>", [], "1"],
  ["", [], "class"],
];
for (const [name, taken, id] of cases)
  test(`“${name}”`, () => {
    expect(newClassId(name, taken)).toBe(id);
    expect(isId(id)).toBe(true);
  });
