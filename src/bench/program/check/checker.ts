// What the checker carries along: problems, scopes, the function it is in, and what was found so far.
//
// A name is looked up from the innermost block outwards; then among the program's functions, which may stand further down,
// because the class's tools put prototypes above; then in the library.
// Does not know: expressions, statements.
import { near } from "../../../base/index.ts";
import { libraryNames } from "../library/signatures.ts";
import type { MeaningProblem, SilentProblem } from "../problems.ts";
import type { Macro } from "../read/boardMacros.ts";
import type { FunctionSyntax, Initialiser } from "../read/syntax.ts";
import type { At } from "../read/token.ts";
import { memoryNames } from "./checkMemory.ts";
import type { FunctionInfo, Statement, Variable } from "./tree.ts";
import { type RecordInfo, type Type, typeName, types } from "./types.ts";

export type Entity =
  | { readonly is: "variable"; readonly variable: Variable }
  | { readonly is: "constant"; readonly type: Type; readonly value: number; readonly line: number }
  | { readonly is: "functions"; readonly list: FunctionInfo[] };

export interface Scope {
  readonly outer: Scope | null;
  readonly names: Map<string, Entity>;
  readonly types: Map<string, Type>;
}

/** What belongs to a record beside its fields. */
export interface RecordMembers {
  readonly info: RecordInfo;
  readonly constructors: FunctionInfo[];
  readonly methods: Map<string, FunctionInfo[]>;
  /** What fields begin with where no constructor says otherwise. */
  readonly fieldInitialisers: Map<string, Initialiser>;
  /** Enumerators and types declared inside. */
  readonly scope: Scope;
}

export interface Checker {
  readonly file: string;
  readonly problems: (MeaningProblem | SilentProblem)[];
  readonly macros: ReadonlyMap<string, Macro>;
  readonly global: Scope;
  scope: Scope;
  current: FunctionInfo | null;
  /** Members of the record whose method is being checked. */
  members: RecordMembers | null;
  readonly records: Map<RecordInfo, RecordMembers>;
  readonly functions: FunctionInfo[];
  /** Functions of the file by name, until their headers have been declared. */
  readonly pending: Map<string, FunctionSyntax[]>;
  readonly statics: Variable[];
  /** Globals that `extern` has announced. */
  readonly announced: Map<string, Variable>;
  readonly literals: Map<string, number>;
  /** Initialisers of globals known before the start, and those that are computed. */
  readonly constantFirst: Statement[];
  readonly computedFirst: Statement[];
  readonly calledWithoutBody: Map<FunctionInfo, At>;
  /** Functions that are handed to attachInterrupt, or whose address is taken. */
  readonly addressed: Set<FunctionInfo>;
  /** The last line of the block that is being checked. */
  lastLine: number;
  loopDepth: number;
  switchDepth: number;
  temporaries: number;
}

type Bare<Problem> = Problem extends unknown ? Omit<Problem, "place" | "severity"> : never;

export function report(c: Checker, at: At, problem: Bare<MeaningProblem>): void {
  c.problems.push({ ...problem, place: { file: c.file, line: at.line, column: at.column } } as MeaningProblem);
}

export function warn(c: Checker, at: At, problem: Bare<SilentProblem>): void {
  const place = { file: c.file, line: at.line, column: at.column };
  c.problems.push({ ...problem, severity: "warning", place } as SilentProblem);
}

export function newScope(outer: Scope | null): Scope {
  return { outer, names: new Map(), types: new Map() };
}

export function inScope<T>(c: Checker, work: () => T): T {
  const before = c.scope;
  c.scope = newScope(before);
  const result = work();
  c.scope = before;
  return result;
}

/** The same for a block of which the last line is known. */
export function inBlock<T>(c: Checker, lastLine: number, work: () => T): T {
  const before = c.lastLine;
  c.lastLine = lastLine;
  const result = inScope(c, work);
  c.lastLine = before;
  return result;
}

/** Looks a name up in the scopes only. @param below stops before this scope. */
export function lookup(c: Checker, name: string, below: Scope | null = null): Entity | null {
  for (let s: Scope | null = c.scope; s !== null && s !== below; s = s.outer) {
    const found = s.names.get(name);
    if (found !== undefined) return found;
  }
  return null;
}

export function lookupType(c: Checker, name: string): Type | null {
  for (let s: Scope | null = c.scope; s !== null; s = s.outer) {
    const found = s.types.get(name);
    if (found !== undefined) return found;
  }
  return c.members?.scope.types.get(name) ?? null;
}

/** Declares a name in the innermost scope; a second declaration is a problem. */
export function declare(c: Checker, at: At, name: string, entity: Entity): void {
  if (name === "") return;
  const before = c.scope.names.get(name);
  if (before !== undefined) {
    const { line, type } = describe(before);
    const found = describe(entity).type;
    if (type !== found && type !== "" && found !== "")
      report(c, at, { code: "program.otherType", name, firstLine: line, first: type, found });
    else report(c, at, { code: "program.redefined", name, firstLine: line });
    return;
  }
  c.scope.names.set(name, entity);
}

function describe(entity: Entity): { line: number; type: string } {
  if (entity.is === "variable") {
    const { line, type, isConst } = entity.variable;
    return { line, type: `${isConst ? "const " : ""}${typeName(type)}` };
  }
  if (entity.is === "constant") return { line: entity.line, type: "" };
  return { line: entity.list[0]?.line ?? 0, type: "" };
}

/** All names that may be used here, for naming the one that was meant. */
export function visibleNames(c: Checker): string[] {
  const names: string[] = [];
  for (let s: Scope | null = c.scope; s !== null; s = s.outer) names.push(...s.names.keys());
  return [...names, ...c.pending.keys(), ...libraryNames(), ...memoryNames, ...c.macros.keys(), "true", "false"];
}

export function nearName(c: Checker, name: string, names: Iterable<string> = visibleNames(c)): string | null {
  return near(name, names);
}

/** A variable of the function that is being checked, or of the program where none is. */
export function newVariable(
  c: Checker,
  name: string,
  type: Type,
  line: number,
  options: { isConst?: boolean; isReference?: boolean; isStatic?: boolean; isVolatile?: boolean } = {},
): Variable {
  const { isConst = false, isReference = false, isStatic = false, isVolatile = false } = options;
  const storage = c.current === null ? "global" : isStatic ? "static" : "local";
  const inMemory = isVolatile || type.kind === "array" || type.kind === "record";
  const variable: Variable = {
    name,
    type,
    isConst,
    isReference,
    line,
    lastLine: c.lastLine,
    storage,
    constant: null,
    cell: -1,
    inFrame: false,
    inMemory,
  };
  if (storage === "local") c.current!.locals.push(variable);
  else c.statics.push(variable);
  return variable;
}

/** A hidden variable for a value that needs a place. */
export function newTemporary(c: Checker, type: Type, line: number): Variable {
  c.temporaries += 1;
  return newVariable(c, `#${c.temporaries}`, type, line);
}

/** The number of a text constant; equal ones share their cells. */
export function literalNumber(c: Checker, bytes: string): number {
  const before = c.literals.get(bytes);
  if (before !== undefined) return before;
  const number = c.literals.size;
  c.literals.set(bytes, number);
  return number;
}

export const unknownValue = { op: "number", type: types.unknown, value: 0 } as const;
