// The door of school/changes: what may be done to a class file, how it is taken back, how two copies come together.
export { applyChange } from "./applyChange.ts";
export type { Change, ChangeKind, SittingRef } from "./change.ts";
export { changeKinds } from "./changeShape.ts";
export type { ChangeEffect, ChangesProblem } from "./changesProblem.ts";
export { type Described, describe } from "./describe.ts";
export { type ActContext, act, begin, type History, type HistoryEntry, historyDepth, redo, undo } from "./history.ts";
export { readHistory, writeHistory } from "./historyText.ts";
export { type Merged, mergeFiles } from "./mergeFiles.ts";
export type { Clash } from "./mergeLists.ts";
export {
  type Assumed,
  type AssumedCode,
  type FirstAnswers,
  type NewClassWords,
  newClassFile,
  type ShippedFacts,
} from "./newClassFile.ts";
export type { Applied, ChangeContext, Outcome, Refused } from "./outcome.ts";
