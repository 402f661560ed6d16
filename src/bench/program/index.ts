// The door of this room: other rooms enter only here.
export * from "./port.ts";
