// The board's side of the circuit: supply, cable, fuse or regulator, the board's own current, and each pin as it drives now.
//
// A pin that drives is the rail behind the pin's resistance; one that listens is nothing at all, and what its leakage could do is
// tried where it is read (readInput.ts). Only pins that something is wired to are in the circuit.
// Does not know: parts, states, time.
import type { Element } from "../circuit/index.ts";
import { boardFacts } from "../parts/index.ts";
import type { Build } from "./build.ts";
import type { Drive } from "./pinPhases.ts";
import { ground, type Wiring } from "./wireUp.ts";

/** Element ids of the board's side. */
export const boardIds = { supply: "board.supply", fuse: "board.fuse", regulator: "board.regulator", own: "board.own" } as const;

/** @returns the id of the element through which a pin drives: "board.D9". Its current counts from the rail or to ground. */
export function pinElement(pin: string): string {
  return `board.${pin}.driver`;
}

/** The board's pins that something is wired to, in the order D0 … D13, A0 … A5. */
export function pinsInUse(wiring: Wiring): readonly string[] {
  return Array.from({ length: 20 }, (_, i) => pinName(i)).filter((pin) => wiring.joined("board", pin));
}

/** @param pin 0..13 are D0..D13, 14..19 are A0..A5. */
export function pinName(pin: number): string {
  return pin < 14 ? `D${pin}` : `A${pin - 14}`;
}

/** Whether the supply is plugged into the USB socket, with a cable between; one that the lesson wires up itself has none. */
export function hasCable({ supply }: Build): boolean {
  return supply.facts.into === "USB" && supply.name === "supply";
}

/** @param limited whether the supply keeps to its rated current; a supply that is better than it promises does not. */
export function supplyElements(build: Build, limited: boolean): readonly Element[] {
  const { supply, circumstances, wiring } = build;
  const { facts } = supply;
  const rail = wiring.node("board", "5V");
  const usb = wiring.node("board", "USB");
  const into = facts.into === "USB" ? usb : facts.into === "VIN" ? wiring.node("board", "VIN") : rail;
  const cable = hasCable(build);
  const plus = cable ? "board.cable" : supply.plus;
  const elements: Element[] = [
    {
      kind: "limitedSource",
      id: boardIds.supply,
      plus,
      minus: supply.minus,
      volts: circumstances.supplyVolts,
      ohms: circumstances.supplyOhms,
      limitAmps: limited && facts.limitAmps ? facts.limitAmps.value : beyondAnyLimit,
    },
    { kind: "resistor", id: boardIds.own, a: rail, b: ground, ohms: boardFacts.supplyVolts.value / boardFacts.ownAmps.value },
  ];
  if (cable) elements.push({ kind: "resistor", id: "board.cable", a: plus, b: usb, ohms: circumstances.cableOhms });
  if (facts.into === "USB")
    elements.push({ kind: "resistor", id: boardIds.fuse, a: into, b: rail, ohms: circumstances.fuseOhms });
  if (facts.into === "VIN") elements.push(regulatorFrom(into, rail));
  return [...elements, ...outlets(wiring)];
}

/** A. A short across a fresh 9 V block gives about 5 A; nothing on a school table gives more than this. */
const beyondAnyLimit = 1000;

function regulatorFrom(input: string, output: string): Element {
  const { volts, dropoutVolts, diodeVolts, quiescentAmps, limitAmps } = boardFacts.regulator;
  return {
    kind: "regulator",
    id: boardIds.regulator,
    input,
    output,
    ground,
    volts: volts.value,
    // The diode at VIN is lost besides.
    dropoutVolts: dropoutVolts.value + diodeVolts.value,
    outputOhms: 0.01,
    quiescentAmps: quiescentAmps.value,
    limitAmps: limitAmps.value,
  };
}

/** What parts may draw from the board: 3V3, and RESET with its pull-up. */
function outlets(wiring: Wiring): readonly Element[] {
  const rail = wiring.node("board", "5V");
  const elements: Element[] = [];
  if (wiring.joined("board", "3V3"))
    elements.push({
      kind: "regulator",
      id: "board.3V3",
      input: rail,
      output: wiring.node("board", "3V3"),
      ground,
      volts: boardFacts.output3V3.volts.value,
      // Data sheet LP2985: 280 mV at 150 mA.
      dropoutVolts: 0.28,
      outputOhms: boardFacts.output3V3.ohms.value,
      quiescentAmps: 0,
    });
  if (wiring.joined("board", "RESET"))
    // 10 kΩ on boards, from memory.
    elements.push({ kind: "resistor", id: "board.RESET", a: rail, b: wiring.node("board", "RESET"), ohms: 10_000 });
  return elements;
}

/** @param drives one letter for each of `pins`. */
export function pinElements(build: Build, pins: readonly string[], drives: string): readonly Element[] {
  const rail = build.wiring.node("board", "5V");
  const { outputOhms, pullUpOhms } = build.circumstances;
  return pins.flatMap((pin, i): Element[] => {
    const drive = drives[i] as Drive;
    if (drive === "i") return [];
    const node = build.wiring.node("board", pin);
    const [a, b] = drive === "0" ? [node, ground] : [rail, node];
    // A pin wired to the very rail that it drives to carries nothing.
    if (a === b) return [];
    return [{ kind: "resistor", id: pinElement(pin), a, b, ohms: drive === "u" ? pullUpOhms : outputOhms }];
  });
}
