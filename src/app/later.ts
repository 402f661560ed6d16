// What the first screen does without: every place but Today, and the doing of acts. A part of its own in the file.
//
// Does not know: when it is fetched (laterCode.ts), how it is packed (scripts/oneFile.ts).
export { act, redo, undo } from "../school/changes/index.ts";
export { laterPlaces } from "./places/laterPlaces.ts";
