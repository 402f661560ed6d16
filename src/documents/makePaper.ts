// Any paper by its name: the input it needs, and one self-contained page that prints well on A4 and Letter.
//
// Does not know: files, browsers, how a page becomes a PDF.
import { type LabelInput, labelPaper } from "./labelPaper.ts";
import { makePage, type PaperContent, type PaperOptions } from "./makePage.ts";
import { type OrderInput, orderPaper } from "./orderPaper.ts";
import { type RotaInput, rotaPaper } from "./rotaPaper.ts";
import { type RunSheetInput, runSheetPaper } from "./runSheetPaper.ts";
import { type TrayInput, trayPaper } from "./trayPaper.ts";
import { type WaveformInput, waveformPaper } from "./waveformPaper.ts";

/** What each paper is made from. */
export interface PaperInputs {
  readonly tray: TrayInput;
  readonly label: LabelInput;
  readonly order: OrderInput;
  readonly "run-sheet": RunSheetInput;
  readonly rota: RotaInput;
  readonly waveform: WaveformInput;
}
export type PaperKind = keyof PaperInputs;

export const paperKinds: readonly PaperKind[] = ["tray", "label", "order", "run-sheet", "rota", "waveform"];

export interface Paper {
  readonly title: string;
  /** Sides of paper, the same on A4 and Letter. */
  readonly sheets: number;
  /** Sides of each of the papers in it, in their order. */
  readonly parts: readonly number[];
  /** A whole HTML page: style and fonts inside, nothing fetched. */
  readonly html: string;
}

/** One paper that is wanted, for `makePapers`. */
export type PaperOrder = { readonly [K in PaperKind]: { readonly kind: K; readonly input: PaperInputs[K] } }[PaperKind];

/** Makes one paper. */
export function makePaper<K extends PaperKind>(kind: K, input: PaperInputs[K], options: PaperOptions): Paper {
  return makePapers([{ kind, input } as PaperOrder], options);
}

/** Makes several papers as one page, in the order given: everything for tomorrow in one go. */
export function makePapers(orders: readonly PaperOrder[], options: PaperOptions): Paper {
  const papers = orders.map((order) => contentOf(order, options));
  return {
    title: papers.map((p) => p.title).join("; "),
    sheets: papers.reduce((sum, p) => sum + p.sheets.length, 0),
    parts: papers.map((p) => p.sheets.length),
    html: makePage(papers, options),
  };
}

function contentOf(order: PaperOrder, { language }: PaperOptions): PaperContent {
  switch (order.kind) {
    case "tray":
      return trayPaper(order.input, language);
    case "label":
      return labelPaper(order.input, language);
    case "order":
      return orderPaper(order.input, language);
    case "run-sheet":
      return runSheetPaper(order.input, language);
    case "rota":
      return rotaPaper(order.input, language);
    case "waveform":
      return waveformPaper(order.input, language);
  }
}
