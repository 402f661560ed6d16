// The geared stepper of 5 V with five wires: four coils with one wire in common.
//
// Two gearings share its name: 64 to 1, and 25792/405, with which a turn takes 2037.8864 full steps (32·22·26·31 / 9·11·9·10 teeth).
// Its rotor goes to where the fed coils pull it: one coil, or two neighbours, the one between them. Two half steps at once it
// follows; more than that, or sooner than it can, and the step is lost.
// Does not know: load on its shaft, resonance, which way it was left.
import { definePart, practice } from "../definePart.ts";
import { beside } from "../footprints.ts";
import type { PartLogic, RotorStep } from "../partKind.ts";

const coils = ["a", "b", "c", "d"];
const figures = {
  mostStepsPerSecond: { value: 500, source: "from memory: runs up to 900–1000 half steps a second without load" },
  settleSeconds: {
    value: 2e-4,
    source: "between the pins that a program sets one after the other a rotor does not move: our choice",
  },
  leastVolts: { value: 3.5, source: "from memory: pulls with about half its torque at 0.7 of its 5 V" },
};

/** Where coils pull the rotor, in half steps of a turn of the field, by which of a, b, c, d are fed. */
const places: Readonly<Record<string, number>> = { a: 0, ab: 1, b: 2, bc: 3, c: 4, cd: 5, d: 6, ad: 7 };
const field = 8;

function logic(): PartLogic {
  const steps: RotorStep[] = [];
  let [fed, fedAt, isTaken] = ["", 0, true];
  let [halfSteps, lost, movedAt] = [0, 0, Number.NEGATIVE_INFINITY];
  const take = (): void => {
    isTaken = true;
    const place = places[fed];
    if (place === undefined) return;
    // Nobody knows how it was left: the first coils set it.
    if (steps.length === 0) {
      halfSteps = place;
      steps.push({ at: fedAt, halfSteps, lost });
      return;
    }
    const way = ((((place - halfSteps) % field) + field + field / 2) % field) - field / 2;
    if (way === 0) return;
    // A half step takes half as long as a whole one.
    const takes = Math.abs(way) / 2 / figures.mostStepsPerSecond.value;
    if (Math.abs(way) <= 2 && fedAt - movedAt >= takes - 1e-9) {
      halfSteps += way;
      movedAt = fedAt;
    } else lost += 1;
    steps.push({ at: fedAt, halfSteps, lost });
  };
  return {
    steps: () => steps,
    look({ volts, now }) {
      const common = volts("common");
      const next = coils.filter((coil) => common - volts(coil) >= figures.leastVolts.value).join("");
      if (!isTaken && now - fedAt >= figures.settleSeconds.value - 1e-9) take();
      if (next !== fed) [fed, fedAt, isTaken] = [next, now, false];
      return isTaken ? {} : { wakeAt: fedAt + figures.settleSeconds.value };
    },
  };
}

export const stepper = definePart({
  id: "stepper",
  legs: [...coils, "common"],
  alsoCalled: { red: "common", plus: "common" },
  markedLeg: "common",
  parameters: {
    "winding-ohms": {
      unit: "Ω",
      usual: { value: 50, source: "data page of the 28BYJ class: 50 Ω ± 7 %" },
      least: 1,
      most: 1000,
      tolerance: { value: 0.14, source: "measured by a forum member: 43.3–43.6 Ω; data page: ±7 %" },
    },
    steps: {
      unit: "1",
      usual: { value: 2038, source: "gear 25792/405 by counted teeth: 2037.8864 full steps a turn" },
      least: 4,
      most: 20_000,
    },
  },
  footprint: beside([...coils, "common"], "a plug with five wires"),
  figures,
  model: (name, node, values) =>
    coils.map((coil) => ({
      kind: "resistor",
      id: `${name}.${coil}`,
      a: node(coil),
      b: node("common"),
      ohms: Number(values["winding-ohms"]),
    })),
  logic,
  noticed: () => [{ sense: "steps", source: "from memory: 500 full steps a second at most" }],
  limits: () =>
    coils.map((coil) => ({ what: "volts", element: coil, caution: { value: 5.5, source: "from memory: 10 % above 5 V" } })),
  coilHenries: () => ({ value: 0.02, source: "from memory: some 10 mH" }),
  standIns: [{ part: "servo", when: "for less than 180°", source: practice }],
  warming: () => ({
    kelvinPerWatt: { value: 25, source: "data pages of the 28BYJ class: at most 40 K at 5 V; 25 K/W from memory" },
    surface: "metal",
  }),
  price: "d",
  loss: "L1",
  cautions: ["hot-when-stalled", "moving-parts"],
  meterTest: "coil-resistance",
  source: "data pages and measurements of the 28BYJ class",
});
