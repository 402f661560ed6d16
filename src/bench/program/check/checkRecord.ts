// struct and class: fields with their offsets, methods, constructors.
//
// Bodies that stand inside are checked when all members are known (C++11, section 9.2). A record whose fields begin with
// values has a constructor even if it writes none.
// Does not know: statements.
import type { FunctionSyntax, RecordSyntax, VariablesSyntax } from "../read/syntax.ts";
import { check, evaluate } from "./checkExpression.ts";
import { type Checker, declare, nearName, newScope, newVariable, type RecordMembers, report } from "./checker.ts";
import { atTopLevel, checkFunctionBody, newFunction } from "./checkFunction.ts";
import { convert } from "./convert.ts";
import { constantOf } from "./fold.ts";
import { completeType, declareEnum, declareType, isConstVariable, parameterType, resolveType } from "./resolveType.ts";
import type { FunctionInfo } from "./tree.ts";
import { bytesOf, cellsOf, type RecordInfo, sameType } from "./types.ts";

export function declareRecord(c: Checker, syntax: RecordSyntax): void {
  const before = c.scope.types.get(syntax.name);
  const known = before?.kind === "record" && !before.of.isComplete ? before.of : null;
  const info: RecordInfo = known ?? {
    name: syntax.name || "struct",
    line: syntax.at.line,
    fields: [],
    cells: 0,
    bytes: 0,
    isComplete: false,
  };
  if (known === null) declareType(c, syntax.at, syntax.name, { kind: "record", of: info });
  const members: RecordMembers = c.records.get(info) ?? {
    info,
    constructors: [],
    methods: new Map(),
    fieldInitialisers: new Map(),
    scope: newScope(null),
  };
  c.records.set(info, members);
  if (syntax.members.length === 0) return;
  const bodies: [FunctionInfo, FunctionSyntax][] = [];
  const outer = c.scope;
  const inner = newScope(outer);
  c.scope = inner;
  for (const { isPrivate, item } of syntax.members) {
    if (item.kind === "enum") declareEnum(c, item, evaluate);
    else if (item.kind === "record") declareRecord(c, item);
    else if (item.kind === "variables" && item.isStatic) declareShared(c, item);
    else if (item.kind === "variables") {
      for (const v of item.variables) {
        const { name, at } = v.declarator;
        const type = completeType(c, at, resolveType(c, item.type, v.declarator, evaluate));
        if (v.declarator.isReference) report(c, at, { code: "program.notSupported", feature: "reference as a field" });
        if (type.kind === "void") report(c, at, { code: "program.voidVariable", name });
        const twice = info.fields.find((f) => f.name === name);
        if (twice) report(c, at, { code: "program.redefined", name, firstLine: twice.line });
        info.fields.push({
          name,
          type,
          isConst: isConstVariable(item.type, v.declarator),
          isPrivate,
          offset: info.cells,
          line: at.line,
        });
        info.cells += cellsOf(type);
        info.bytes += bytesOf(type);
        if (v.initialiser !== null) members.fieldInitialisers.set(name, v.initialiser);
      }
    } else {
      const made = newFunction(c, item, members, isPrivate);
      bodies.push([made, item]);
      if (made.isConstructor) members.constructors.push(made);
      else members.methods.set(made.name, [...(members.methods.get(made.name) ?? []), made]);
    }
  }
  for (const [name, entity] of inner.names) members.scope.names.set(name, entity);
  for (const [name, type] of inner.types) {
    members.scope.types.set(name, type);
    // So that Class::Type is found; the parser keeps its last name only.
    if (!outer.types.has(name)) outer.types.set(name, type);
  }
  c.scope = outer;
  info.isComplete = true;
  if (members.constructors.length === 0 && members.fieldInitialisers.size > 0)
    bodies.push(impliedConstructor(c, syntax, members));
  for (const [made, item] of bodies) atTopLevel(c, () => checkFunctionBody(c, made, item, members));
}

/** `static const int width = 8;`, `static int made;`: what belongs to the class and not to each of its things. */
function declareShared(c: Checker, syntax: VariablesSyntax): void {
  for (const v of syntax.variables) {
    const { name, at } = v.declarator;
    const type = resolveType(c, syntax.type, v.declarator, evaluate);
    // One that is no constant gets its place here and its value where it is defined, outside of the class.
    if (v.initialiser === null) {
      const variable = atTopLevel(c, () =>
        newVariable(c, name, completeType(c, at, type), at.line, { isConst: isConstVariable(syntax.type, v.declarator) }),
      );
      declare(c, at, name, { is: "variable", variable });
      continue;
    }
    const given = v.initialiser?.kind === "value" ? convert(c, at, check(c, v.initialiser.value), type) : null;
    const value = given === null ? null : constantOf(given);
    if (value === null) report(c, at, { code: "program.notSupported", feature: "static member" });
    declare(c, at, name, { is: "constant", type, value: value ?? 0, line: at.line });
  }
}

/** The constructor that nobody wrote: every field begins with its own value. */
function impliedConstructor(c: Checker, syntax: RecordSyntax, members: RecordMembers): [FunctionInfo, FunctionSyntax] {
  const { at } = syntax;
  const declarator = { at, name: syntax.name, owner: "", pointers: [], isReference: false, sizes: [], pointsToFunction: null };
  const written: FunctionSyntax = {
    kind: "function",
    at,
    type: null,
    declarator,
    parameters: [],
    fields: [],
    isConst: false,
    body: { kind: "block", at, list: [], end: at },
  };
  const made = newFunction(c, written, members, false);
  members.constructors.push(made);
  return [made, written];
}

/** A method or constructor that stands outside its class: `void Lamp::on() {…}`. */
export function checkMethodOutside(c: Checker, syntax: FunctionSyntax): void {
  const { owner, name, at } = syntax.declarator;
  const type = c.global.types.get(owner);
  const members = type?.kind === "record" ? c.records.get(type.of) : undefined;
  if (!members) {
    report(c, at, { code: "program.unknownName", name: owner, near: nearName(c, owner, c.global.types.keys()) });
    return;
  }
  const parameters = syntax.parameters.map((p) => parameterType(c, p, evaluate));
  const list = syntax.type === null ? members.constructors : (members.methods.get(name) ?? []);
  const found = list.find(
    (f) => f.parameters.length === parameters.length && f.parameters.every((p, i) => sameType(p.type, parameters[i]!)),
  );
  if (found) checkFunctionBody(c, found, syntax, members);
  else report(c, at, { code: "program.unknownMember", name, of: owner, near: nearName(c, name, members.methods.keys()) });
}
