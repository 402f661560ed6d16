// Laws that hold for every kind of the catalogue, so that a part that is added is checked without a test of its own.
import { expect, test } from "vitest";
import { solveDc, terminals } from "../circuit/index.ts";
import { allValues, catalogue, findKind, partNames } from "./catalogue.ts";
import { elementId, footprintOf, type PartKind, type PartState, type PartValues } from "./partKind.ts";

const kinds = [...catalogue.values()];
const usualState = (kind: PartKind): PartState =>
  Object.fromEntries(Object.entries(kind.states).map(([name, s]) => [name, s.atFirst]));
/** Values that a kind without usual ones needs, from the middle of their range. */
const someValues = (kind: PartKind): PartValues =>
  allValues(
    kind,
    Object.fromEntries(
      Object.entries(kind.parameters).flatMap(([name, s]) =>
        s.usual ? [] : [[name, Math.sqrt((s.least ?? 1) * (s.most ?? 1))]],
      ),
    ),
  );

/** The usual values and state, then each parameter, type and state at its ends. */
function* situations(kind: PartKind): Generator<[PartValues, PartState]> {
  const values = someValues(kind);
  const state = usualState(kind);
  yield [values, state];
  for (const type of Object.keys(kind.types ?? {})) yield [allValues(kind, { ...someValues(kind), ...kind.types![type] }), state];
  for (const [name, s] of Object.entries(kind.parameters))
    for (const value of s.unit === "word" ? (s.words ?? []) : [s.least!, s.most!])
      yield [allValues(kind, { ...values, [name]: value }), state];
  for (const [name, s] of Object.entries(kind.states))
    for (const value of s.unit === "yes-no"
      ? [true, false]
      : s.unit === "position"
        ? range(s.least!, s.most!)
        : [s.least!, s.most!])
      yield [values, { ...state, [name]: value }];
}
const range = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i);
const modelOf = (kind: PartKind, values: PartValues, state: PartState) =>
  kind.model("X1", (leg) => `X1.${kind.joined?.find((group) => group.includes(leg))?.[0] ?? leg}`, values, state);

test("the catalogue holds what lessons and kits speak of", () => {
  expect(kinds.length).toBeGreaterThanOrEqual(50);
  for (const name of ["1N4148", "1N4007", "BC547", "PN2222A", "BC557", "2N7000", "1N5819", "74HC595", "ULN2003A", "electrolytic"])
    expect(findKind(name), name).not.toBe(null);
  expect(findKind("lamp")).toBe(null);
  expect(findKind("capacitor", "electrolytic")?.kind.id).toBe("electrolytic");
  expect(new Set(partNames).size).toBe(partNames.length);
});

for (const kind of kinds) {
  test(`${kind.id}: legs, names and marks fit together`, () => {
    expect(new Set(kind.legs).size).toBe(kind.legs.length);
    for (const leg of [kind.markedLeg, ...(kind.joined ?? []).flat(), ...Object.values(kind.alsoCalled ?? {})])
      if (leg !== null) expect(kind.legs).toContain(leg);
    for (const name of Object.keys(kind.alsoCalled ?? {})) expect(kind.legs).not.toContain(name);
    // A leg's name must survive a list in YAML: [R1.1, LED1.anode].
    for (const leg of kind.legs) expect(leg).toMatch(/^[A-Za-z0-9]+$/);
    if (kind.typeOf) expect(catalogue.has(kind.typeOf.kind)).toBe(true);
  });

  test(`${kind.id}: every leg has one hole of its own`, () => {
    for (const footprint of [kind.footprint, ...Object.values(kind.footprintsByType ?? {})]) {
      expect([...footprint.legs.map((l) => l.leg)].sort()).toEqual([...kind.legs].sort());
      if (footprint.style !== "beside")
        expect(new Set(footprint.legs.map((l) => `${l.row} ${l.column}`)).size).toBe(kind.legs.length);
      for (const { row, column } of footprint.legs)
        expect(Number.isInteger(row) && row >= 0 && Number.isInteger(column) && column >= 0).toBe(true);
    }
    for (const type of Object.keys(kind.footprintsByType ?? {})) expect(kind.types).toHaveProperty([type]);
    expect(footprintOf(kind, someValues(kind)).legs.length).toBe(kind.legs.length);
  });

  test(`${kind.id}: every figure has a source`, () => {
    const values = someValues(kind);
    const sourced = [
      kind,
      kind.limits(values),
      kind.noticed(values),
      kind.draws?.(values),
      kind.supply?.(values),
      kind.coilHenries?.(values),
    ];
    const seen: unknown[] = [];
    const walk = (thing: unknown): void => {
      if (typeof thing !== "object" || thing === null || seen.includes(thing)) return;
      seen.push(thing);
      if ("value" in thing || "sense" in thing || "when" in thing || "price" in thing) {
        const { source } = thing as { source?: unknown };
        expect(typeof source === "string" && source.length > 4, JSON.stringify(thing)).toBe(true);
      }
      if ("value" in thing && typeof thing.value === "number") expect(Number.isFinite(thing.value)).toBe(true);
      Object.values(thing).forEach(walk);
    };
    sourced.forEach(walk);
  });

  test(`${kind.id}: usual values and states are in their ranges`, () => {
    for (const [name, s] of Object.entries(kind.parameters)) {
      if (s.unit === "word") {
        expect(s.words?.length, name).toBeGreaterThan(0);
        if (s.usual) expect(s.words).toContain(s.usual.value);
        for (const [other, word] of Object.entries(s.synonyms ?? {})) {
          expect(s.words).toContain(word);
          expect(s.words).not.toContain(other);
        }
      } else {
        expect(s.least, name).toBeLessThan(s.most!);
        if (s.usual) expect(Number(s.usual.value) >= s.least! && Number(s.usual.value) <= s.most!, name).toBe(true);
      }
      if (s.tolerance) expect(s.tolerance.value > 0 && s.tolerance.value < 1).toBe(true);
      // What tells items apart only where it is not usual must have a usual value.
      if (s.tellsApart === "unlessUsual") expect(s.usual).not.toBe(null);
      if (s.bare !== undefined) expect(name).toMatch(/milli/);
    }
    for (const [type, values] of Object.entries(kind.types ?? {})) {
      expect(values.type).toBe(type);
      expect(kind.parameters.type?.words).toContain(type);
      for (const name of Object.keys(values)) expect(kind.parameters).toHaveProperty([name]);
    }
    for (const s of Object.values(kind.states)) {
      if (s.unit === "yes-no") expect(typeof s.atFirst).toBe("boolean");
      else expect(Number(s.atFirst) >= s.least! && Number(s.atFirst) <= s.most!).toBe(true);
    }
  });

  test(`${kind.id}: its model is sound in every situation`, () => {
    const everSeen = new Set<string>();
    for (const [values, state] of situations(kind)) {
      const elements = modelOf(kind, values, state);
      for (const element of elements) {
        everSeen.add(element.id);
        expect(element.id === "X1" || element.id.startsWith("X1."), element.id).toBe(true);
        for (const [field, value] of Object.entries(element)) {
          if (typeof value === "number") expect(Number.isFinite(value), `${element.id} ${field}`).toBe(true);
        }
        for (const terminal of terminals[element.kind])
          expect(String((element as unknown as Record<string, unknown>)[terminal]).startsWith("X1.")).toBe(true);
      }
      // The solver refuses what no part has: 0 Ω, a negative capacitor, two elements of one name.
      const [first] = kind.legs;
      if (elements.length > 0)
        expect(
          solveDc({ elements: elements.map((e) => grounded(e, `X1.${first}`)) }).status,
          JSON.stringify([values, state]),
        ).not.toBe("badElement");
    }
    // What limits and senses speak of exists.
    const values = someValues(kind);
    for (const { element } of [
      ...kind.limits(values),
      ...kind.noticed(values).filter((n) => n.sense !== "angle" && n.sense !== "steps"),
    ] as {
      element?: string;
    }[])
      expect(everSeen).toContain(elementId("X1", element));
  });

  test(`${kind.id}: limits rise from caution to unsafe`, () => {
    for (const [values] of situations(kind))
      for (const { caution, unsafe } of kind.limits(values)) {
        expect(caution ?? unsafe).toBeDefined();
        for (const limit of [caution, unsafe]) if (limit) expect(limit.value).toBeGreaterThan(0);
        if (caution && unsafe) expect(caution.value).toBeLessThanOrEqual(unsafe.value);
      }
    for (const [values] of situations(kind))
      for (const noticed of kind.noticed(values))
        if (noticed.sense === "light") {
          expect(noticed.dimAmps).toBeLessThan(noticed.litAmps);
          expect(noticed.litAmps).toBeLessThan(noticed.tooBrightAmps);
        } else if (noticed.sense === "contact") expect(noticed.dropOutVolts).toBeLessThan(noticed.pullInVolts);
  });

  test(`${kind.id}: what may stand in for it is in the catalogue`, () => {
    for (const { part, when } of kind.standIns) {
      expect(findKind(part.split(" ")[0]!), part).not.toBe(null);
      expect(when).not.toBe("");
    }
  });
}

/** The same element with one node called ground. */
function grounded<E extends { readonly kind: string }>(element: E, ground: string): E {
  return Object.fromEntries(
    Object.entries(element).map(([field, value]) => [field, value === ground && field !== "id" ? "0" : value]),
  ) as unknown as E;
}
