// The door of this room: other rooms enter only here.
export * from "./plan.ts";
export { type PlanInput, type PlannedClass, planClass, suppliesToTry } from "./planClass.ts";
export { type RehearsingSchool, rehearseForSchool } from "./rehearseForSchool.ts";
