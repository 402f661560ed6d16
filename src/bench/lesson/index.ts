// The door of this room: other rooms enter only here.
export * from "./lesson.ts";
export { currentFormat, formatVersions } from "./lessonFormat.ts";
export type { LessonProblem } from "./lessonProblem.ts";
export { lessonSchema } from "./lessonSchema.ts";
export type { LessonSource } from "./lessonSource.ts";
export { seenWords, usualTolerance } from "./readExpectation.ts";
export { readLesson } from "./readLesson.ts";
export { splitLeg } from "./readNets.ts";
