// The door of school/changes: what may be done to a class file, and how it is taken back.
export type { Change, ChangeKind, SittingRef } from "./change.ts";
