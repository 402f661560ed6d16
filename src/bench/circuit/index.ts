// The door of this room: other rooms enter only here.
export * from "./netlist.ts";
export * from "./outcome.ts";
