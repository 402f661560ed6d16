// The door of this room: other rooms enter only here.
export { makePaper, makePapers, type Paper, type PaperInputs, type PaperKind, type PaperOrder, paperKinds } from "./makePaper.ts";
export type { PaperOptions } from "./paper.ts";
export type { PaperSize } from "./style.ts";
