// The door of this room: other rooms enter only here.
export { type RehearsalOptions, rehearse } from "./rehearse.ts";
export { type OnceOptions, type OneRehearsal, rehearseOnce, strongSupply } from "./rehearseOnce.ts";
export * from "./result.ts";
