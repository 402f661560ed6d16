// The door of this room: other rooms enter only here.

export { type ExpectedReadings, expectedReadings, shownVolts } from "./expectedReadings.ts";
export type { PaperOptions } from "./makePage.ts";
export { makePaper, makePapers, type Paper, type PaperInputs, type PaperKind, type PaperOrder, paperKinds } from "./makePaper.ts";
export { type PaperMakings, type PaperWish, paperOrders } from "./paperOrders.ts";
export type { PaperSize } from "./styleSheet.ts";
export { waveformFigure } from "./waveformFigure.ts";
export { across, roundStep, scaleLines, type WaveScale, waveScale } from "./waveScale.ts";
export { type FastBox, type WaveShape, waveShape, withoutNoise } from "./waveShape.ts";
