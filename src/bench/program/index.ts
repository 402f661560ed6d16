// The door of this room: other rooms enter only here.

export { kindOfMessage, type SaidKind, type Wording } from "./explain/compiler/said.ts";
export type { ExplainCode, Explained, Fix } from "./explain/explained.ts";
export { type Explanation, explainProgram, type FirstMessage } from "./explain/explainProgram.ts";
export { type Program, parseProgram } from "./parseProgram.ts";
export { pinName, pinNames, pinNumber } from "./pinName.ts";
export * from "./port.ts";
export type { BrokenCode, ProgramProblem, ProgramProblemCode } from "./problems.ts";
export { readTokens } from "./read/readTokens.ts";
export type { Token, TokenKind } from "./read/token.ts";
export { type Input, type Inputs, readInputs } from "./readInputs.ts";
export { type RunOptions, runProgram } from "./runProgram.ts";
export { type InputRun, type InputRunOptions, inputsPort, problemsOf, runWithInputs } from "./runWithInputs.ts";
export type { WalkEnd, WalkPin, WalkStep, WalkValue } from "./walking/step.ts";
export { type Walk, type WalkOptions, walkProgram } from "./walkProgram.ts";
