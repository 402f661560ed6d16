// Every knob that a hand can turn has its label, and no label is left over.
import { expect, test } from "vitest";
import { catalogue } from "../../../bench/parts/index.ts";
import { english } from "../../../language/catalogue.ts";

test("states with a figure have a label for their field", () => {
  const states = [...catalogue.values()].flatMap(({ states }) =>
    Object.entries(states).flatMap(([name, spec]) => (spec.inner || typeof spec.atFirst === "boolean" ? [] : [name])),
  );
  expect(Object.keys(english.app.walkState).sort()).toEqual([...new Set(states)].sort());
});
