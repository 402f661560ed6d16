// The door of this room: other rooms enter only here.
export { type Probe, probeName, readProbe } from "./readProbe.ts";
export { type RehearsalOptions, rehearse } from "./rehearse.ts";
export { type OnceOptions, type OneRehearsal, rehearseOnce, strongSupply } from "./rehearseOnce.ts";
export * from "./result.ts";
export { tellingTrace } from "./tellingTrace.ts";
export type { TracePoint } from "./thinPoints.ts";
export { type Trace, type TracedProbe, type TraceRequest, traceLesson } from "./traceLesson.ts";
export { type HandAct, type LessonWalk, type WalkLessonOptions, walkLesson } from "./walkLesson.ts";
