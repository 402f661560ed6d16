// Programs put together at random from what beginners compute with: variables of every type, operators, conversions, arrays.
//
// Variables are volatile, so that the chip computes and not the compiler; divisors are odd and shifts stay within their width,
// because what lies beyond is undefined. Everything computed is printed.
// Does not know: how they are run.
import { type Random, seededRandom } from "../../src/base/index.ts";

const types = ["bool", "char", "signed char", "byte", "int", "unsigned int", "long", "unsigned long", "float"] as const;
type Name = (typeof types)[number];
const ranges: Readonly<Record<Name, readonly [number, number]>> = {
  bool: [0, 1],
  char: [-128, 127],
  "signed char": [-128, 127],
  byte: [0, 255],
  int: [-32768, 32767],
  "unsigned int": [0, 65535],
  long: [-2147483648, 2147483647],
  "unsigned long": [0, 4294967295],
  float: [-3000, 3000],
};

interface Variable {
  readonly name: string;
  readonly type: Name;
}

/** @returns a whole program that prints some thirty lines. */
export function randomProgram(seed: number): string {
  const random = seededRandom(seed, "random programs");
  const pick = <T>(list: readonly T[]): T => list[random.int(0, list.length - 1)]!;
  const variables: Variable[] = types.flatMap((type, i) => [0, 1].map((k) => ({ name: `v${2 * i + k}`, type })));
  const whole = variables.filter((v) => v.type !== "float");
  const lines: string[] = [];
  const declarations = variables.map((v) => `volatile ${v.type} ${v.name} = ${value(random, v.type)};`);

  /** @param onlyWhole no floats in it: for %, shifts and bits. */
  const expression = (depth: number, onlyWhole: boolean): string => {
    if (depth === 0 || random.int(0, 5) === 0)
      return random.int(0, 3) === 0 ? constant(random, onlyWhole) : pick(onlyWhole ? whole : variables).name;
    const one = () => expression(depth - 1, onlyWhole);
    const bits = () => expression(depth - 1, true);
    switch (random.int(0, onlyWhole ? 13 : 9)) {
      case 0:
      case 1:
        return `(${one()} + ${one()})`;
      case 2:
        return `(${one()} - ${one()})`;
      case 3:
        return `(${one()} * ${one()})`;
      case 4:
        return onlyWhole ? `(${one()} / (${bits()} | 1))` : `(${one()} / 7)`;
      case 5:
        return `(${one()} ${pick(["<", ">", "<=", ">=", "==", "!="])} ${one()})`;
      case 6:
        return `(${one()} ? ${one()} : ${one()})`;
      case 7:
        return `(-${one()})`;
      case 8:
        return onlyWhole ? `((${pick(types.filter((t) => t !== "float"))})${one()})` : `(${one()} && ${one()})`;
      case 9:
        return `(!${one()} || ${one()})`;
      case 10:
        return `(${bits()} ${pick(["&", "|", "^"])} ${bits()})`;
      case 11:
        return `(${bits()} % (${bits()} | 1))`;
      case 12:
        return `(~${bits()})`;
      default:
        return `(${bits()} ${pick(["<<", ">>"])} ${random.int(0, 15)})`;
    }
  };

  for (let n = 0; n < 30; n += 1) {
    const target = pick(variables);
    const onlyWhole = target.type !== "float" || random.int(0, 1) === 0;
    const kind = random.int(0, 5);
    if (kind <= 1) lines.push(`Serial.println(${expression(3, true)});`);
    else if (kind === 2 && target.type !== "float" && target.type !== "bool")
      lines.push(
        `${target.name} ${pick(["+=", "-=", "*=", "&=", "|=", "^=", "<<=", ">>="])} ${random.int(0, 1) === 0 ? random.int(0, 7) : pick(whole.filter((v) => v.type === "bool")).name}; Serial.println(${target.name});`,
      );
    else if (kind === 3 && target.type !== "bool" && target.type !== "float")
      lines.push(`Serial.println(${pick(["++", "--"])}${target.name}); Serial.println(${target.name}${pick(["++", "--"])});`);
    else if (target.type === "float")
      lines.push(`${target.name} = ${floatExpression(random, variables)}; Serial.println(${target.name}, 3);`);
    else lines.push(`${target.name} = ${expression(2, onlyWhole)}; Serial.println(${target.name});`);
  }
  return `${declarations.join("\n")}\n\nvoid setup() {\n  Serial.begin(115200);\n  ${lines.join("\n  ")}\n}\n\nvoid loop() {}\n`;
}

function value(random: Random, type: Name): string {
  const [least, most] = ranges[type];
  if (type === "float") return (random.int(least * 100, most * 100) / 100).toFixed(2);
  const edge = [least, most, 0, 1, Math.floor(most / 2)];
  const n =
    random.int(0, 2) === 0 ? edge[random.int(0, edge.length - 1)]! : least + Math.floor(random.next() * (most - least + 1));
  return written(n, type);
}

/** −32768 and −2147483648 have no positive counterpart to put a minus before. */
function written(n: number, type: Name): string {
  if (type === "unsigned long") return `${n}UL`;
  if (type === "long") return n === -2147483648 ? "(-2147483647L - 1)" : `${n}L`;
  return n === -32768 ? "(-32767 - 1)" : String(n);
}

function constant(random: Random, onlyWhole: boolean): string {
  const kinds = [
    "7",
    "0",
    "1",
    "255",
    "256U",
    "1000",
    "30000",
    "40000U",
    "70000L",
    "3000000000UL",
    "'A'",
    "0x80",
    "0xFFFF",
    "010",
    "true",
  ];
  return onlyWhole || random.int(0, 2) > 0
    ? kinds[random.int(0, kinds.length - 1)]!
    : ["0.5", "2.25", "1e3", "-3.75f"][random.int(0, 3)]!;
}

/** Floats of a size that print shows exactly enough: sums, products with small numbers, quotients. */
function floatExpression(random: Random, variables: readonly Variable[]): string {
  const floats = variables.filter((v) => v.type === "float").map((v) => v.name);
  const small = variables.filter((v) => ["char", "byte", "int", "bool"].includes(v.type)).map((v) => v.name);
  const pick = (list: readonly string[]) => list[random.int(0, list.length - 1)]!;
  switch (random.int(0, 4)) {
    case 0:
      return `${pick(floats)} * 0.37 + ${pick(small)}`;
    case 1:
      return `(${pick(floats)} - ${pick(floats)}) / ${random.int(2, 9)}`;
    case 2:
      return `${pick(small)} / 10.0 - ${pick(floats)} / 4`;
    case 3:
      return `(float)${pick(small)} / (1 + ${pick(floats)} * ${pick(floats)} * 0.001)`;
    default:
      return `(int)(${pick(floats)} * 1.5) * 0.25`;
  }
}
