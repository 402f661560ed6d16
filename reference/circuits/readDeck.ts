// Reads a SPICE deck into our netlist, and what ngspice printed about it.
//
// Only what our decks use: R C L V I D Q M, .model, and two subcircuits that stand for supplies ngspice has no element for.
// A line that it does not know throws, because a deck that is half-read would compare the wrong circuit.
// Source: ngspice 39 manual, chapters 2 to 4, 7, 8, 11; defaults of the models from the tables there.
import { type Element, type Netlist, nodesOf } from "../../src/bench/circuit/index.ts";

export interface Deck {
  readonly title: string;
  readonly netlist: Netlist;
}

const prefixes: Record<string, number> = {
  t: 1e12,
  g: 1e9,
  meg: 1e6,
  k: 1e3,
  m: 1e-3,
  u: 1e-6,
  n: 1e-9,
  p: 1e-12,
  f: 1e-15,
};

/** "4.7k" as SPICE reads it: case does not matter, M is milli and Meg is mega, letters after the prefix are ignored. */
export function spiceNumber(text: string): number {
  const match = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(meg|[tgkmunpf])?[a-z]*$/i.exec(text);
  if (!match) throw new Error(`not a number: ${text}`);
  return Number(match[1]) * (prefixes[(match[2] ?? "").toLowerCase()] ?? 1);
}

type Values = Record<string, number>;

export function readDeck(text: string): Deck {
  const [title = "", ...lines] = text.split(/\r?\n/);
  const models = new Map<string, { type: string; values: Values }>();
  const parts: string[][] = [];
  let skipUntil: string | null = null;
  for (const line of lines) {
    const lower = line.trim().toLowerCase();
    if (skipUntil !== null) {
      if (lower.startsWith(skipUntil)) skipUntil = null;
    } else if (lower.startsWith(".control")) skipUntil = ".endc";
    else if (lower.startsWith(".subckt")) skipUntil = ".ends";
    else if (lower.startsWith(".model")) {
      const [, name, type, rest] = /^\.model\s+(\S+)\s+(\w+)\s*\(?([^)]*)\)?$/.exec(lower) ?? [];
      if (!name || !type) throw new Error(`not a model: ${line}`);
      models.set(name, { type, values: readValues(rest ?? "") });
    } else if (lower !== "" && !/^(\*|\.options|\.nodeset|\.end)/.test(lower)) parts.push(lower.split(/\s+/));
  }
  return { title, netlist: { elements: parts.map((words) => readElement(words, models)) } };
}

function readValues(text: string): Values {
  return Object.fromEntries([...text.matchAll(/(\w+)\s*=\s*([^\s,]+)/g)].map((m) => [m[1], spiceNumber(m[2] as string)]));
}

function readElement(words: readonly string[], models: ReadonlyMap<string, { type: string; values: Values }>): Element {
  const [id = "", n1 = "", n2 = "", n3 = "", n4 = "", n5 = ""] = words;
  const model = (name: string) => {
    const found = models.get(name);
    if (!found) throw new Error(`no model ${name}`);
    return found;
  };
  switch (id[0]) {
    case "r":
      return { kind: "resistor", id, a: n1, b: n2, ohms: spiceNumber(n3) };
    case "c":
      return { kind: "capacitor", id, a: n1, b: n2, farads: spiceNumber(n3) };
    case "l":
      return { kind: "inductor", id, a: n1, b: n2, henries: spiceNumber(n3) };
    case "v":
      return { kind: "voltageSource", id, plus: n1, minus: n2, volts: spiceNumber(n3 === "dc" ? n4 : n3) };
    case "i":
      return { kind: "currentSource", id, from: n1, to: n2, amps: spiceNumber(n3 === "dc" ? n4 : n3) };
    case "d": {
      const { is = 1e-14, n = 1, rs = 0, bv, ibv } = model(n3).values;
      const breakdown = { ...(bv !== undefined && { breakdownVolts: bv }), ...(ibv !== undefined && { breakdownAmps: ibv }) };
      return { kind: "diode", id, anode: n1, cathode: n2, saturationAmps: is, emission: n, seriesOhms: rs, ...breakdown };
    }
    case "q": {
      const { type, values } = model(n4);
      const { is = 1e-16, bf = 100, br = 1, rb = 0, rc = 0, re = 0 } = values;
      const kind = type === "npn" ? "npn" : "pnp";
      const leads = { collector: n1, base: n2, emitter: n3, baseOhms: rb, collectorOhms: rc, emitterOhms: re };
      return { kind, id, ...leads, saturationAmps: is, forwardGain: bf, reverseGain: br };
    }
    case "m": {
      if (n3 !== n4) throw new Error(`${id}: our MOSFET has its bulk at the source`);
      const { type, values } = model(n5);
      const { vto = 0, kp = 2e-5, lambda = 0 } = values;
      const { w = 1e-4, l = 1e-4 } = readValues(words.slice(6).join(" "));
      const kind = type === "nmos" ? "nmos" : "pmos";
      const legs = { drain: n1, gate: n2, source: n3 };
      return { kind, id, ...legs, thresholdVolts: vto, transconductance: (kp * w) / l, lambda };
    }
    case "x": {
      const values = readValues(words.slice(3).join(" "));
      const { volts = 0, ohms = 0, most = 0, dropout = 0, quiescent = 0 } = values;
      if (n3 === "limited") return { kind: "limitedSource", id, plus: n1, minus: n2, volts, ohms, limitAmps: most };
      const rest = { volts, dropoutVolts: dropout, outputOhms: ohms, quiescentAmps: quiescent };
      if (n4 === "regulator") return { kind: "regulator", id, output: n1, input: n2, ground: n3, ...rest };
    }
  }
  throw new Error(`not an element of ours: ${words.join(" ")}`);
}

/**
 * What `print all` printed at an operating point.
 *
 * @returns V by node name and A by source name.
 */
export function readPrinted(output: string, deck: Deck): { volts: Map<string, number>; amps: Map<string, number> } {
  const volts = new Map<string, number>();
  const amps = new Map<string, number>();
  for (const [, name = "", value] of output.matchAll(/^(\S+) = (\S+)$/gm)) {
    const source = /^(\S+)#branch$/.exec(name)?.[1];
    if (source) amps.set(source, Number(value));
    // A lone vector is printed under the name that it was asked for.
    else if (name === "all") volts.set(onlyNode(deck), Number(value));
    else volts.set(/^v\((\S+)\)$/.exec(name)?.[1] ?? name, Number(value));
  }
  return { volts, amps };
}

function onlyNode({ netlist }: Deck): string {
  const nodes = new Set(netlist.elements.flatMap(nodesOf).filter((node) => node !== "0"));
  if (nodes.size !== 1) throw new Error("more than one node, but one vector");
  return [...nodes][0] as string;
}
