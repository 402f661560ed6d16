// The door of this room: other rooms enter only here.
export * from "./netlist.ts";
export * from "./outcome.ts";
export { type PreparedCircuit, prepareCircuit } from "./prepareCircuit.ts";
export { prepareTransient, type RunningCircuit } from "./prepareTransient.ts";
export { solveDc } from "./solveDc.ts";
export { solveTransient, type TransientRequest } from "./solveTransient.ts";
export { nodesOf, terminals } from "./terminals.ts";
export { nextBend, type Points, type Pulse, type Sine, valueAt, type Waveform } from "./waveform.ts";
