// Reads a SPICE deck into our netlist, and what ngspice printed about it.
//
// Only what our decks use: R C L V I D Q M with DC, PULSE, SIN and PWL sources, .model, .op, .tran, .ic and .options, and two
// subcircuits that stand for supplies ngspice has no element for. A line or a model parameter that it does not know throws,
// because a deck that is half-read would compare the wrong circuit.
// Source: ngspice 39 manual, chapters 2 to 4, 7, 8, 11, 15; defaults of the models from the tables there.
import { type Element, type Netlist, nodesOf, valueAt, type Waveform } from "../../src/bench/circuit/index.ts";

/** The times that a .tran line asks for, s. */
export interface TranLine {
  readonly step: number;
  readonly stop: number;
  readonly start: number;
  readonly fromInitial: boolean;
}

export interface Deck {
  readonly title: string;
  /** Names in lower case: SPICE does not tell cases apart. */
  readonly netlist: Netlist;
  /** Names as they stand in the deck, by their lower case. */
  readonly spelling: ReadonlyMap<string, string>;
  readonly tran: TranLine | null;
  readonly hasOp: boolean;
  readonly celsius: number;
  readonly gmin: number;
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
type Models = ReadonlyMap<string, { type: string; values: Values }>;

/** Parameters of models that we read; the value is the one at which the other ones play no part. */
const known: Record<string, Values> = {
  d: { is: 0, n: 0, rs: 0, bv: 0, ibv: 0, cjo: 0, tt: 0 },
  npn: { is: 0, bf: 0, br: 0, rb: 0, rc: 0, re: 0, vaf: 0, var: 0 },
  nmos: { vto: 0, kp: 0, lambda: 0 },
};
known.pnp = known.npn as Values;
known.pmos = known.nmos as Values;
/** Others that change nothing at the temperature at which they were measured, or are the default we have. */
const harmless: Record<string, number | null> = {
  level: 1,
  eg: null,
  xti: null,
  tnom: 27,
  vj: 1,
  m: 0.5,
  fc: 0.5,
  nf: 1,
  nr: 1,
  kf: 0,
  af: null,
  xtb: null,
  phi: null,
  gamma: 0,
};
/** Other names of the same. */
const sameParameter: Record<string, string> = { cj0: "cjo", va: "vaf", vt0: "vto" };

/** @returns the lines without comments, those that go on joined to the one before. */
function joinLines(lines: readonly string[]): string[] {
  const joined: string[] = [];
  for (const line of lines) {
    const bare = line.replace(/;.*$|\$\s.*$/, "").trim();
    if (bare.startsWith("+")) joined.push(`${joined.pop() ?? ""} ${bare.slice(1)}`);
    else if (bare !== "" && !bare.startsWith("*")) joined.push(bare);
  }
  return joined;
}

export function readDeck(text: string): Deck {
  const [title = "", ...rest] = text.split(/\r?\n/);
  const models = new Map<string, { type: string; values: Values }>();
  const parts: string[] = [];
  const spelling = new Map<string, string>();
  const initial = new Map<string, number>();
  let tran: TranLine | null = null;
  let hasOp = false;
  let options: Values = {};
  let skipUntil: string | null = null;
  for (const line of joinLines(rest)) {
    const lower = line.toLowerCase();
    if (skipUntil !== null) {
      if (lower.startsWith(skipUntil)) skipUntil = null;
      // Within .control the same commands stand without their dot.
      else if (/^op\b/.test(lower)) hasOp = true;
      else if (/^tran\s/.test(lower)) tran = readTran(lower);
      continue;
    }
    const [command = ""] = lower.split(/\s+/);
    if (!command.startsWith(".")) {
      parts.push(lower);
      for (const word of line.split(/[\s=(),]+/)) if (!spelling.has(word.toLowerCase())) spelling.set(word.toLowerCase(), word);
    } else if (command === ".end") break;
    else if (command === ".control") skipUntil = ".endc";
    else if (command === ".subckt") skipUntil = ".ends";
    else if (command === ".model") readModel(lower, models);
    else if (command === ".op") hasOp = true;
    else if (command === ".tran") tran = readTran(lower);
    else if (command === ".temp") options.temp = spiceNumber(lower.split(/\s+/)[1] ?? "");
    else if (command.startsWith(".option")) options = { ...options, ...readValues(lower) };
    else if (command === ".ic")
      for (const [, node, value] of lower.matchAll(/v\(\s*(\S+?)\s*\)\s*=\s*(\S+)/g))
        initial.set(node as string, spiceNumber(value as string));
    else if (!/^\.(nodeset|print|plot|save|probe|width|title)$/.test(command)) throw new Error(`not a command of ours: ${line}`);
  }
  const { temp = 27, tnom = 27, gmin = 1e-12 } = options;
  if (temp !== tnom) throw new Error("our junctions are told for the temperature that they are used at");
  const read = parts.map((part) => readElement(part, models, tran));
  const elements = initial.size === 0 ? read : read.map((element) => withInitial(element, initial, tran));
  return { title, netlist: { elements }, spelling, tran, hasOp, celsius: temp, gmin };
}

function readModel(line: string, models: Map<string, { type: string; values: Values }>): void {
  const [, name, type, rest] = /^\.model\s+(\S+)\s+(\w+)\s*\(?([^)]*)\)?$/.exec(line) ?? [];
  const ours = known[type ?? ""];
  if (!name || !type || !ours) throw new Error(`not a model of ours: ${line}`);
  const values: Values = {};
  for (const [written, value] of Object.entries(readValues(rest ?? ""))) {
    const parameter = sameParameter[written] ?? written;
    const usual = harmless[parameter];
    if (parameter in ours) values[parameter] = value;
    else if (usual === undefined || (usual !== null && usual !== value))
      throw new Error(`not a parameter of ours: ${parameter} of ${name}`);
  }
  models.set(name, { type, values });
}

function readTran(line: string): TranLine {
  const words = line.split(/\s+/).slice(1);
  const [step = Number.NaN, stop = Number.NaN, start = 0] = words.filter((word) => word !== "uic").map(spiceNumber);
  return { step, stop, start, fromInitial: words.includes("uic") };
}

/** ".ic" gives node voltages; only with "uic", and only for capacitors to ground, is that what our elements can be told. */
function withInitial(element: Element, initial: ReadonlyMap<string, number>, tran: TranLine | null): Element {
  if (!tran?.fromInitial) throw new Error(".ic without uic");
  if (element.kind !== "capacitor" || element.initialVolts !== undefined) return element;
  return { ...element, initialVolts: (initial.get(element.a) ?? 0) - (initial.get(element.b) ?? 0) };
}

function readValues(text: string): Values {
  return Object.fromEntries([...text.matchAll(/(\w+)\s*=\s*([^\s,]+)/g)].map((m) => [m[1], spiceNumber(m[2] as string)]));
}

/** "5", "dc 5", "pulse(0 5 0 1u 1u 1m 2m)", "dc 0 sin(0 5 50)": the value at rest and the wave. SPICE's defaults hang on .tran. */
function readSource(text: string, tran: TranLine | null): { value: number; wave?: Waveform } {
  const shape = /(pulse|sin|pwl)\s*\(?([^)]*)\)?/.exec(text);
  const dc = /^\s*(?:dc\s+)?([+-]?[\d.]\S*)/.exec(text.replace(shape?.[0] ?? "", " "));
  if (!shape) return { value: dc ? spiceNumber(dc[1] as string) : 0 };
  const values = (shape[2] as string)
    .split(/[\s,]+/)
    .filter(Boolean)
    .map(spiceNumber);
  const { step = 0, stop = 0 } = tran ?? {};
  const orElse = (value: number | undefined, usual: number) => (value ? value : usual);
  let wave: Waveform;
  if (shape[1] === "pulse") {
    const [low = 0, high = 0, delay = 0, rise, fall, width, period] = values;
    const cycle = orElse(period, stop);
    wave = {
      kind: "pulse",
      low,
      high,
      delay,
      rise: orElse(rise, step),
      fall: orElse(fall, step),
      width: orElse(width, stop),
      ...(cycle > 0 && { period: cycle }),
    };
  } else if (shape[1] === "sin") {
    const [offset = 0, amplitude = 0, hertz, delay = 0, damping = 0, phase = 0] = values;
    if (phase !== 0) throw new Error("our sine begins at its offset");
    wave = { kind: "sine", offset, amplitude, hertz: orElse(hertz, 1 / stop), delay, damping };
  } else
    wave = { kind: "points", points: values.flatMap((s, k) => (k % 2 === 0 ? [[s, values[k + 1] as number] as const] : [])) };
  return { value: dc ? spiceNumber(dc[1] as string) : valueAt(wave, 0), wave };
}

function readElement(line: string, models: Models, tran: TranLine | null): Element {
  const words = line.split(/[\s]+/).map((word) => (word === "gnd" ? "0" : word));
  const [id = "", n1 = "", n2 = "", n3 = "", n4 = "", n5 = ""] = words;
  const named = readValues(line.replace(/^(\S+\s+){3}/, ""));
  const model = (name: string) => {
    const found = models.get(name);
    if (!found) throw new Error(`no model ${name}`);
    return found;
  };
  const size = (name: string) => named[name] ?? spiceNumber(n3);
  switch (id[0]) {
    case "r":
      return { kind: "resistor", id, a: n1, b: n2, ohms: size("r") };
    case "c":
      return {
        kind: "capacitor",
        id,
        a: n1,
        b: n2,
        farads: size("c"),
        ...(named.ic !== undefined && { initialVolts: named.ic }),
      };
    case "l":
      return { kind: "inductor", id, a: n1, b: n2, henries: size("l"), ...(named.ic !== undefined && { initialAmps: named.ic }) };
    case "v": {
      const { value, wave } = readSource(words.slice(3).join(" "), tran);
      return { kind: "voltageSource", id, plus: n1, minus: n2, volts: value, ...(wave && { wave }) };
    }
    case "i": {
      const { value, wave } = readSource(words.slice(3).join(" "), tran);
      return { kind: "currentSource", id, from: n1, to: n2, amps: value, ...(wave && { wave }) };
    }
    case "d": {
      const { is = 1e-14, n = 1, rs = 0, bv, ibv, cjo, tt } = model(n3).values;
      const breakdown = { ...(bv !== undefined && { breakdownVolts: bv }), ...(ibv !== undefined && { breakdownAmps: ibv }) };
      const charge = { ...(cjo && { junctionFarads: cjo }), ...(tt && { transitSeconds: tt }) };
      return {
        kind: "diode",
        id,
        anode: n1,
        cathode: n2,
        saturationAmps: is,
        emission: n,
        seriesOhms: rs,
        ...breakdown,
        ...charge,
      };
    }
    case "q": {
      const { type, values } = model(n4);
      const { is = 1e-16, bf = 100, br = 1, rb = 0, rc = 0, re = 0, vaf, var: reverseEarly } = values;
      const kind = type === "npn" ? "npn" : "pnp";
      const leads = { collector: n1, base: n2, emitter: n3, baseOhms: rb, collectorOhms: rc, emitterOhms: re };
      const early = { ...(vaf && { earlyVolts: vaf }), ...(reverseEarly && { reverseEarlyVolts: reverseEarly }) };
      return { kind, id, ...leads, saturationAmps: is, forwardGain: bf, reverseGain: br, ...early };
    }
    case "m": {
      if (n3 !== n4) throw new Error(`${id}: our MOSFET has its bulk at the source`);
      const { type, values } = model(n5);
      const { vto = 0, kp = 2e-5, lambda = 0 } = values;
      const { w = 1e-4, l = 1e-4 } = named;
      const kind = type === "nmos" ? "nmos" : "pmos";
      const legs = { drain: n1, gate: n2, source: n3 };
      return { kind, id, ...legs, thresholdVolts: vto, transconductance: (kp * w) / l, lambda };
    }
    case "x": {
      const { volts = 0, ohms = 0, most = 0, dropout = 0, quiescent = 0 } = named;
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
