// Random circuits for tests: any element between any nodes, values over many decades, sensible or not.
//
// Does not know: what is expected of them.
import type { Random } from "../../base/index.ts";
import type { Element, Netlist } from "./netlist.ts";

/** A number from low to high, evenly over its logarithm. */
function spread(random: Random, low: number, high: number): number {
  return low * (high / low) ** random.next();
}

function between(random: Random, low: number, high: number): number {
  return low + (high - low) * random.next();
}

/** One element of a kind; kinds that real circuits have more of come more often. */
function randomElement(random: Random, id: string, nodes: readonly string[]): Element {
  const node = () => nodes[random.int(0, nodes.length - 1)] as string;
  const [a, b, c] = [node(), node(), node()];
  const maybe = (ohms: number) => (random.int(0, 1) === 0 ? 0 : ohms);
  switch (random.int(0, 19)) {
    case 0:
    case 1:
      return { kind: "voltageSource", id, plus: a, minus: random.int(0, 2) === 0 ? b : "0", volts: between(random, -12, 12) };
    case 2:
      return { kind: "currentSource", id, from: a, to: b, amps: spread(random, 1e-9, 0.5) };
    case 3:
    case 4:
    case 5: {
      const breakdown = random.int(0, 2) === 0 ? { breakdownVolts: spread(random, 2.4, 30), breakdownAmps: 5e-3 } : {};
      const saturationAmps = spread(random, 1e-24, 1e-6);
      const emission = between(random, 1, 5);
      const seriesOhms = maybe(spread(random, 0.05, 50));
      return { kind: "diode", id, anode: a, cathode: b, saturationAmps, emission, seriesOhms, ...breakdown };
    }
    case 6:
    case 7:
    case 8:
      return {
        kind: random.int(0, 1) === 0 ? "npn" : "pnp",
        id,
        collector: a,
        base: b,
        emitter: c,
        saturationAmps: spread(random, 1e-16, 1e-12),
        forwardGain: spread(random, 20, 800),
        reverseGain: spread(random, 0.5, 10),
        baseOhms: maybe(spread(random, 1, 100)),
        collectorOhms: maybe(spread(random, 0.1, 10)),
        emitterOhms: maybe(spread(random, 0.1, 10)),
      };
    case 9:
    case 10: {
      const kind = random.int(0, 1) === 0 ? "nmos" : "pmos";
      const thresholdVolts = between(random, 0.6, 3) * (kind === "nmos" ? 1 : -1);
      const transconductance = spread(random, 1e-4, 1);
      return { kind, id, drain: a, gate: b, source: c, thresholdVolts, transconductance, lambda: maybe(0.02) };
    }
    case 11: {
      const volts = between(random, 1, 12);
      return {
        kind: "limitedSource",
        id,
        plus: a,
        minus: "0",
        volts,
        ohms: maybe(spread(random, 0.05, 5)),
        limitAmps: spread(random, 0.01, 2),
      };
    }
    case 12: {
      const volts = random.int(0, 1) === 0 ? 5 : 3.3;
      const rest = { dropoutVolts: between(random, 0.1, 2), outputOhms: maybe(0.1), quiescentAmps: 5e-3 };
      const limit = random.int(0, 1) === 0 ? { limitAmps: spread(random, 0.05, 1) } : {};
      return { kind: "regulator", id, output: a, input: b, ground: "0", volts, ...rest, ...limit };
    }
    case 13:
      return { kind: "capacitor", id, a, b, farads: 1e-7 };
    case 14:
      return { kind: "inductor", id, a, b, henries: 1e-3 };
    default:
      return { kind: "resistor", id, a, b, ohms: spread(random, 0.1, 1e7) };
  }
}

/** Up to 12 nodes and 24 elements, of which some may hang in the air, fight each other or be joined to themselves. */
export function randomCircuit(random: Random): Netlist {
  const nodes = Array.from({ length: random.int(2, 12) }, (_, k) => (k === 0 ? "0" : `n${k}`));
  const elements = Array.from({ length: random.int(2, 24) }, (_, k) => randomElement(random, `E${k}`, nodes));
  return { elements };
}

/**
 * The same with what every real part has: ohms in sources, coils and junctions, and a leak beside a current source. Such a
 * circuit always has an answer.
 */
export function randomRealCircuit(random: Random): Netlist {
  const elements = randomCircuit(random).elements.flatMap((element): Element[] => {
    const inner = `${element.id} inside`;
    const ohms = spread(random, 0.05, 50);
    const behind = (outer: string): Element => ({ kind: "resistor", id: `${element.id} ohms`, a: outer, b: inner, ohms });
    switch (element.kind) {
      case "voltageSource":
        return [{ ...element, plus: inner }, behind(element.plus)];
      case "inductor":
        return [{ ...element, a: inner }, behind(element.a)];
      case "currentSource":
        return [
          element,
          { kind: "resistor", id: `${element.id} leak`, a: element.from, b: element.to, ohms: 1000 / element.amps ** 0.5 },
        ];
      case "diode":
        return [{ ...element, seriesOhms: element.seriesOhms || ohms }];
      case "limitedSource":
        return [{ ...element, ohms: element.ohms || ohms }];
      case "regulator":
        return [{ ...element, outputOhms: element.outputOhms || ohms }];
      case "npn":
      case "pnp":
        return [{ ...element, baseOhms: element.baseOhms || ohms, emitterOhms: element.emitterOhms || ohms / 10 }];
      default:
        return [element];
    }
  });
  return { elements };
}
