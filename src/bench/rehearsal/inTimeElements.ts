// A table's circuit as it is followed in time: one wiring for whatever the pins drive, and parts with what they keep.
//
// Each pin in use has two resistors, one to the rail and one to ground; what it drives decides which of them conducts. So an edge
// changes two numbers and the circuit goes on.
// Does not know: time, when something changes.
import type { Element, OperatingPoint } from "../circuit/index.ts";
import { boardIds, pinElement, supplyElements } from "./boardElements.ts";
import type { Build } from "./build.ts";
import { drawElements } from "./draws.ts";
import { uncaughtCoils } from "./findBareCoils.ts";
import type { Drive } from "./pinPhases.ts";
import { firstState, type TableState } from "./table.ts";
import { ground } from "./wireUp.ts";

/**
 * Ω of a pin's driver that does not conduct: at most 5 nA, far below the leakage of 1 µA that is promised. What nothing else holds
 * settles at 0 V, as for a table at rest.
 */
const offHighOhms = 1e15;
const offLowOhms = 1e9;

/** Ω of a coil whose current nobody can follow, because nothing takes it over when it is cut. */
const wireOhms = 0.001;

/**
 * @returns the elements of a state; without power the supply is not there, everything else still is. A coil that is switched and has no
 * diode is told as such (findBareCoils.ts), and keeps nothing: how high it drives its voltage nobody knows.
 */
export function inTimeElements(build: Build, pins: readonly string[], state: TableState): readonly Element[] {
  const bare = uncaughtCoils(build);
  const supply = supplyElements(build, state.limited).filter((e) => state.supplyOn || e.id !== boardIds.supply);
  const parts = [...build.parts.values()].flatMap((part) => {
    const model = part.kind.inTime ?? part.kind.model;
    const own = state.states.get(part.name) ?? firstState(build, part.name);
    const elements = model(part.name, (leg) => build.wiring.node(part.name, leg), part.values, own);
    return [
      ...(bare.has(part.name) ? elements.map(withoutCoil) : elements),
      ...drawElements(build, part, state.doing.get(part.name)),
    ];
  });
  return [...supply, ...pins.flatMap((pin, i) => driverElements(build, pin, state.drives[i] as Drive)), ...parts];
}

function withoutCoil(element: Element): Element {
  if (element.kind === "motor") return { ...element, henries: 0 };
  if (element.kind !== "inductor") return element;
  return { kind: "resistor", id: element.id, a: element.a, b: element.b, ohms: wireOhms };
}

/** Whether anything in a build keeps charge, current or speed. */
export function keepsAnything(elements: readonly Element[]): boolean {
  return elements.some((e) => e.kind === "capacitor" || e.kind === "inductor" || e.kind === "motor");
}

/** What stands for one pin and what it drives. */
export function driverElements(build: Build, pin: string, drive: Drive): readonly Element[] {
  const rail = build.wiring.node("board", "5V");
  const node = build.wiring.node("board", pin);
  const { outputOhms, pullUpOhms } = build.circumstances;
  const high = drive === "1" ? outputOhms : drive === "u" ? pullUpOhms : offHighOhms;
  const low = drive === "0" ? outputOhms : offLowOhms;
  const elements: Element[] = [];
  // A pin wired to the very rail that it drives to carries nothing.
  if (node !== rail) elements.push({ kind: "resistor", id: highSide(pin), a: rail, b: node, ohms: high });
  if (node !== ground) elements.push({ kind: "resistor", id: lowSide(pin), a: node, b: ground, ohms: low });
  return elements;
}

const highSide = (pin: string) => `${pinElement(pin)}.high`;
const lowSide = (pin: string) => `${pinElement(pin)}.low`;

/** @returns A out of a pin in a circuit of `inTimeElements`. */
export function pinAmpsInTime(point: OperatingPoint, elements: ReadonlyMap<string, Element>, pin: string): number {
  const amps = (id: string) => (elements.has(id) ? point.amps(id) : 0);
  return amps(highSide(pin)) - amps(lowSide(pin));
}
