// Walks once through a round of a loop without changing anything, to learn whether the rounds to come are all alike.
//
// They are if the round goes on looping, changes nothing outside, and leaves every cell that it read before writing as it was.
// The one thing that moves is time: what `millis` and `micros` gave is followed as "value + ticks", through sums, differences,
// cuts to other widths, / and % by constants, and each comparison says after how many ticks it would turn. The smallest of
// these is the horizon: until then all rounds are alike. Whatever cannot be followed makes the horizon one tick.
// Does not know: how rounds are skipped, what they cost.
import {
  compareIntegers,
  compareNumbers,
  floatOperation,
  floatToInteger,
  integerToFloat,
  shiftOperation,
} from "../check/arithmetic.ts";
import type { CallExpression, CheckedProgram, Expression, Place, Statement } from "../check/tree.ts";
import { cellKind, cellsOf, heldType, type IntegerType } from "../check/types.ts";
import { changes } from "../library/define.ts";
import { libraryFunction } from "../library/signatures.ts";
import { breaks, continues, type Ending, goOn, returns } from "./coder.ts";
import type { Machine, Pointer } from "./machine.ts";
import { RoundMemory } from "./roundMemory.ts";
import { compareTimed, convertTimed, operateTimed, type Source, still, type Timed } from "./timed.ts";

/** Ticks of millis and micros until which all rounds are alike; null if they are not. */
export type Horizon = { readonly millis: number; readonly micros: number } | null;

/** Steps after which a round is too long to be a mere wait. */
const mostSteps = 4000;

/** Thrown inside a walk, and caught at its beginning. */
const notAlike = Symbol("not alike");

function stop(): never {
  throw notAlike;
}

type Loop = Statement & { do: "while" | "doWhile" | "for" };

/** @param loop its test, body and step are walked, in this order. */
export function walkRound(m: Machine, program: CheckedProgram, loop: Loop): Horizon {
  const walk = new Walk(m, program);
  try {
    return walk.round(loop);
  } catch (thrown) {
    if (thrown === notAlike) return null;
    throw thrown;
  }
}

class Walk {
  private readonly m: Machine;
  private readonly program: CheckedProgram;
  private readonly memory: RoundMemory;
  private readonly horizon = { millis: Number.POSITIVE_INFINITY, micros: Number.POSITIVE_INFINITY };
  private frame: number;
  private top: number;
  private steps = 0;
  private depth = 0;
  private result: unknown = null;

  constructor(m: Machine, program: CheckedProgram) {
    this.m = m;
    this.program = program;
    this.memory = new RoundMemory(m);
    this.frame = m.frame;
    this.top = m.top;
  }

  round(loop: Loop): Horizon {
    if (loop.test !== null && !this.test(loop.test)) return null;
    const ending = this.statement(loop.body);
    if (ending === breaks || ending === returns) return null;
    if (loop.do === "for" && loop.step !== null) this.effect(loop.step);
    if (!this.memory.isAsBefore()) return null;
    return this.horizon;
  }

  /** All rounds are alike only for so many ticks. */
  private readonly limit = (source: Source, ticks: number): void => {
    if (source !== null && ticks < this.horizon[source]) this.horizon[source] = ticks;
  };

  private step(): void {
    this.steps += 1;
    if (this.steps > mostSteps) stop();
  }

  // Statements

  private statement(s: Statement): Ending {
    this.step();
    switch (s.do) {
      case "expression":
        this.effect(s.value);
        return goOn;
      case "block":
        return this.list(s.list, 0);
      case "if":
        return this.test(s.test) ? this.statement(s.yes) : s.no === null ? goOn : this.statement(s.no);
      case "while":
      case "for":
      case "doWhile":
        return this.loop(s);
      case "switch": {
        const start = s.cases.get(this.plain(this.int(s.value))) ?? s.otherwise;
        const ending = this.list(s.list, start);
        return ending === breaks ? goOn : ending;
      }
      case "break":
        return breaks;
      case "continue":
        return continues;
      case "return":
        this.result = s.value === null ? null : this.any(s.value);
        return returns;
      case "once":
        return this.m.ints[s.flag.cell] === 0 ? stop() : goOn;
      default:
        return stop();
    }
  }

  private list(list: readonly Statement[], start: number): Ending {
    for (let i = start; i < list.length; i += 1) {
      const ending = this.statement(list[i]!);
      if (ending !== goOn) return ending;
    }
    return goOn;
  }

  private loop(s: Loop): Ending {
    if (s.do === "for" && s.first !== null) this.statement(s.first);
    let isFirst = s.do === "doWhile";
    while (isFirst || s.test === null || this.test(s.test)) {
      isFirst = false;
      this.step();
      const ending = this.statement(s.body);
      if (ending === breaks) return goOn;
      if (ending === returns) return returns;
      if (s.do === "for" && s.step !== null) this.effect(s.step);
    }
    return goOn;
  }

  // Places and expressions

  private place(p: Place): number {
    switch (p.at) {
      case "variable":
        return p.variable.inFrame ? this.frame + p.variable.cell : p.variable.cell;
      case "literal":
        return this.program.literals[p.literal]!.cell;
      case "field":
        return this.place(p.record) + p.offset;
      case "index": {
        const i = this.plain(this.int(p.index));
        if (i >>> 0 >= p.length) stop();
        return this.place(p.array) + i * cellsOf(p.type);
      }
      case "pointer": {
        const pointer = this.thing(p.pointer) as Pointer | null;
        if (!pointer || pointer.at < pointer.low || pointer.at + cellsOf(p.type) > pointer.high) return stop();
        return pointer.at;
      }
      case "after":
        this.effect(p.effect);
        return this.place(p.place);
      default:
        return stop();
    }
  }

  /** A value of any kind: what `put` takes. */
  private any(e: Expression): unknown {
    if (e.type.kind === "record") return e.op === "record" ? this.place(e.place) : stop();
    if (e.type.kind === "void" || e.type.kind === "unknown") return this.effect(e);
    const kind = cellKind(e.type);
    return kind === "int" ? this.int(e) : kind === "float" ? this.float(e) : this.thing(e);
  }

  private effect(e: Expression): void {
    if (e.op === "assign") this.memory.put(this.place(e.place), e.type, this.any(e.value));
    else if (e.op === "library") this.library(e);
    else if (e.op === "call") this.call(e);
    else if (e.op === "comma" && e.type.kind === "void") this.effect(e.first);
    else if (e.op === "choose" && e.type.kind === "void") this.effect(this.test(e.test) ? e.yes : e.no);
    else if (e.type.kind === "void") stop();
    else if (e.type.kind !== "unknown") this.any(e);
  }

  /** A number that is used in a way that cannot be followed: it is right for one tick. */
  private plain(timed: Timed): number {
    if (timed.slope !== 0) this.limit(timed.source, 1);
    return timed.value;
  }

  private int(e: Expression): Timed {
    this.step();
    switch (e.op) {
      case "number":
        return still(e.value);
      case "load":
        if (e.place.at !== "letter") return this.memory.loadInt(this.place(e.place));
        return still(
          ((String(this.memory.loadThing(this.place(e.place.text))).charCodeAt(this.plain(this.int(e.place.index))) || 0) <<
            24) >>
            24,
        );
      case "assign": {
        if (e.place.at === "letter") return stop();
        const value = this.int(e.value);
        this.memory.putInt(this.place(e.place), value);
        return value;
      }
      case "compound":
        return this.compound(e);
      case "step": {
        if (e.place.at === "letter") return stop();
        const cell = this.place(e.place);
        const before = this.memory.loadInt(cell);
        const after = convertTimed(
          { ...before, value: before.value + e.by },
          heldType(e.type) as IntegerType,
          heldType(e.type) as IntegerType,
          this.limit,
        );
        this.memory.putInt(cell, after);
        return e.after ? before : after;
      }
      case "negate":
        return operateTimed("-", still(0), this.int(e.value), e.type as IntegerType, this.limit) ?? stop();
      case "complement": {
        const value = this.int(e.value);
        return operateTimed("-", still(-1), value, e.type as IntegerType, this.limit) ?? stop();
      }
      case "arithmetic":
        return operateTimed(e.operator, this.int(e.left), this.int(e.right), e.type as IntegerType, this.limit) ?? stop();
      case "shift": {
        const left = this.int(e.left);
        const count = this.plain(this.int(e.right));
        // A shift to the right is a division.
        if (left.slope !== 0 && e.operator === ">>" && count >= 0 && count < 15)
          return operateTimed("/", left, still(2 ** count), e.type, this.limit) ?? stop();
        return still(shiftOperation(e.operator, this.plain(left), count, e.type));
      }
      case "convert":
        if (e.from.kind === "float") return still(floatToInteger(this.float(e.value), heldType(e.type) as IntegerType));
        return convertTimed(this.int(e.value), e.from, heldType(e.type) as IntegerType, this.limit);
      case "compare":
      case "comparePointers":
      case "not":
      case "and":
      case "or":
      case "isSet":
        return still(this.test(e) ? 1 : 0);
      case "choose":
        return this.int(this.test(e.test) ? e.yes : e.no);
      case "comma":
        this.effect(e.first);
        return this.int(e.second);
      case "call":
        return this.call(e) as Timed;
      case "library":
        if (e.name.startsWith("millis/")) return { value: this.m.clock.millis(), slope: 1, source: "millis" };
        if (e.name.startsWith("micros/")) return { value: this.m.clock.micros(), slope: 1, source: "micros" };
        return still(this.library(e) as number);
      default:
        return stop();
    }
  }

  private compound(e: Expression & { op: "compound" }): Timed {
    const held = heldType(e.type) as IntegerType;
    if (e.place.at === "letter" || e.inType.kind === "float") return stop();
    const value = this.int(e.value);
    const cell = this.place(e.place);
    const before = this.memory.loadInt(cell);
    const { operator, inType } = e;
    const wide = convertTimed(before, held, inType, this.limit);
    const result =
      operator === "<<" || operator === ">>"
        ? still(shiftOperation(operator, this.plain(wide), this.plain(value), inType))
        : (operateTimed(operator, wide, value, inType, this.limit) ?? stop());
    const after = convertTimed(result, inType, held, this.limit);
    this.memory.putInt(cell, after);
    return after;
  }

  private test(e: Expression): boolean {
    this.step();
    switch (e.op) {
      case "compare":
        if (e.inType.kind === "float") return compareNumbers(e.operator, this.float(e.left), this.float(e.right));
        return this.compare(e, e.inType);
      case "comparePointers":
        return compareNumbers(e.operator, addressIn(this.thing(e.left)), addressIn(this.thing(e.right)));
      case "not":
        return !this.test(e.value);
      case "and":
        return this.test(e.left) && this.test(e.right);
      case "or":
        return this.test(e.left) || this.test(e.right);
      case "isSet":
        return e.value.type.kind === "serial" || this.thing(e.value) !== null;
      default: {
        const value = this.int(e);
        const type = heldType(e.type);
        return type.kind === "integer" ? compareTimed("!=", value, still(0), type, this.limit) : this.plain(value) !== 0;
      }
    }
  }

  private compare(e: Expression & { op: "compare" }, type: IntegerType): boolean {
    const left = this.int(e.left);
    const right = this.int(e.right);
    if (left.slope === 0 && right.slope === 0) return compareIntegers(e.operator, left.value, right.value, type);
    return compareTimed(e.operator, left, right, type, this.limit);
  }

  private float(e: Expression): number {
    this.step();
    switch (e.op) {
      case "number":
        return e.value;
      case "load":
        return this.memory.loadFloat(this.place(e.place));
      case "assign": {
        const value = this.float(e.value);
        this.memory.putFloat(this.place(e.place), value);
        return value;
      }
      case "negate":
        return -this.float(e.value);
      case "arithmetic":
        return floatOperation(e.operator, this.float(e.left), this.float(e.right)) ?? stop();
      case "convert":
        return e.from.kind === "float" ? this.float(e.value) : integerToFloat(this.plain(this.int(e.value)), e.from);
      case "choose":
        return this.float(this.test(e.test) ? e.yes : e.no);
      case "call":
        return this.call(e) as number;
      case "library":
        return this.library(e) as number;
      default:
        return stop();
    }
  }

  private thing(e: Expression): unknown {
    this.step();
    switch (e.op) {
      case "text":
        return e.bytes;
      case "null":
      case "number":
        return null;
      case "load":
        return this.memory.loadThing(this.place(e.place));
      case "assign": {
        const value = this.thing(e.value);
        this.memory.putThing(this.place(e.place), value);
        return value;
      }
      case "address": {
        const { place } = e;
        if (place.at === "pointer") return this.thing(place.pointer);
        if (place.at !== "index") {
          const at = this.place(place);
          return { at, low: at, high: at + cellsOf(place.type) };
        }
        const low = this.place(place.array);
        const i = this.plain(this.int(place.index));
        if (i >>> 0 > place.length) return stop();
        const size = cellsOf(place.type);
        return { at: low + i * size, low, high: low + place.length * size };
      }
      case "movePointer": {
        const pointer = this.thing(e.pointer) as Pointer | null;
        const by = this.plain(this.int(e.count)) * e.stride * e.sign;
        return pointer === null ? null : { at: pointer.at + by, low: pointer.low, high: pointer.high };
      }
      case "choose":
        return this.thing(this.test(e.test) ? e.yes : e.no);
      case "library":
        return this.library(e);
      case "call":
        return this.call(e);
      default:
        return stop();
    }
  }

  private library(e: Expression & { op: "library" }): unknown {
    const f = libraryFunction(e.name);
    if (f.still === null) return stop();
    const values = e.values.map((v) => {
      const value = this.any(v);
      return cellKind(v.type) === "int" ? this.plain(value as Timed) : value;
    });
    const result = (f.still as (m: Machine, ...values: unknown[]) => unknown)(this.m, ...values);
    return result === changes ? stop() : result;
  }

  private call(e: CallExpression): unknown {
    if (typeof e.called !== "number" || e.into !== null) return stop();
    const f = this.program.functions[e.called]!;
    if (f.body === null || this.depth > 20) return stop();
    const values = e.values.map((v) => this.any(v));
    const self = e.self === null ? null : this.thing({ op: "address", type: f.self!.type, place: e.self });
    const base = f.isReentrant ? this.top : 0;
    if (f.self !== null) this.memory.putThing(base + f.self.cell, self);
    f.parameters.forEach((p, i) => {
      if (p.isReference) this.memory.putThing(base + p.cell, values[i]);
      else this.memory.put(base + p.cell, p.type, values[i]);
    });
    const before = { frame: this.frame, top: this.top };
    if (f.isReentrant) {
      this.frame = base;
      this.top = base + f.cells;
    }
    this.depth += 1;
    const ending = this.statement(f.body);
    this.depth -= 1;
    Object.assign(this, before);
    if (ending !== returns && f.result.kind !== "void") return stop();
    return this.result;
  }
}

function addressIn(thing: unknown): number {
  if (thing === null) return 0;
  return (thing as Partial<Pointer>).at ?? stop();
}
