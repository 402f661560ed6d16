// The door of this room: other rooms enter only here.
export * from "./netlist.ts";
export * from "./outcome.ts";
export { type PreparedCircuit, prepareCircuit } from "./prepareCircuit.ts";
export { solveDc } from "./solveDc.ts";
export { nodesOf, terminals } from "./terminals.ts";
