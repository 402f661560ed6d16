// The look of the papers: one black on white, thin and thick lines, two weights of one typeface.
//
// 190 x 259 mm is what A4 and Letter share with margins that cheap printers keep (10 mm and more), so a sheet breaks at the same
// place on both. Text 4.2 mm, notes 2.8 mm, nothing under 2.6 mm. Only logical properties: a page set from right to left
// mirrors, its drawings, codes and readings do not. Lines are whole pixels (0.26 mm): browsers cut the rest off.
// Does not know: what stands on a sheet.
import { bold, type FontPiece, regular } from "./fonts/notoSans.ts";

export type PaperSize = "A4" | "Letter";

/** The part of a sheet that is printed on, mm. */
export const sheetWidth = 190;
export const sheetHeight = 259;

/** Margins that put the sheet in the middle: A4 is 210 x 297 mm (ISO 216), Letter 8.5 x 11 inches. A little less, for rounding. */
const margins: Readonly<Record<PaperSize, string>> = { A4: "18.5mm 9.9mm", Letter: "9.9mm 12.8mm" };

/** @returns the style sheet of a page for a paper size, fonts inside. */
export function styleSheet(size: PaperSize): string {
  return `${fontFaces()}@page{size:${size};margin:${margins[size]}}${rules}`;
}

/** One face for each piece of the font; a browser takes only the pieces whose signs stand on the page. */
function fontFaces(): string {
  const face = (weight: number, { range, woff2 }: FontPiece) =>
    `@font-face{font-family:"Paper";font-weight:${weight};src:url(data:font/woff2;base64,${woff2}) format("woff2");unicode-range:${range}}`;
  return [...regular.map((piece) => face(400, piece)), ...bold.map((piece) => face(700, piece))].join("");
}

const rules = `
*,*::before,*::after{box-sizing:border-box}
html{font:400 4.2mm/1.35 "Paper","Noto Sans","Noto Sans Arabic","Noto Sans Hebrew",sans-serif;font-variant-numeric:tabular-nums lining-nums;color:#000;background:#fff;-webkit-text-size-adjust:100%;print-color-adjust:exact}
body{margin:0}
h1,h2,h3,p,ul,ol,figure,table{margin:0;padding:0}
ul,ol{list-style:none}
h1{font-size:10mm;line-height:1.1}
h2{font-size:6mm;line-height:1.2}
h3{font-size:4.2mm;line-height:1.3}
small,.note,thead th{font-size:2.8mm;font-weight:400;line-height:1.3}
svg{direction:ltr;display:block}
bdi,p,td,th{overflow-wrap:anywhere}
.sheet{inline-size:190mm;block-size:259mm;margin:10mm auto;position:relative;display:flex;flex-direction:column}
.top{display:flex;justify-content:space-between;align-items:flex-end;column-gap:6mm;border-block-end:3px solid #000;padding-block-end:2mm;margin-block-end:2mm}
.top>:first-child{flex:1 1 0;min-inline-size:0}
.big{font-size:22mm;font-weight:700;line-height:.85;text-align:end}
.end{text-align:end}
table{border-collapse:collapse;inline-size:100%}
th,td{text-align:start;vertical-align:middle;font-weight:400;padding-block:1mm;padding-inline:0 3mm}
th:last-child,td:last-child{padding-inline-end:0}
thead th{vertical-align:bottom;border-block-end:2px solid #000}
tbody tr{border-block-end:1px solid #000}
tbody th{font-weight:700}
tfoot th,tfoot td{font-weight:700}
tfoot tr:first-child>*{border-block-start:2px solid #000}
small.under{display:block}
.num{text-align:end;white-space:nowrap}
.nowrap{white-space:nowrap}
.tick{display:inline-block;inline-size:6mm;block-size:6mm;border:1px solid #000;vertical-align:middle}
.tick.none{border-style:dashed}
.line{display:inline-block;border-block-end:1px solid #000;block-size:7mm;min-inline-size:12mm}
.foot{margin-block-start:auto}
.sign+.foot{margin-block-start:0}
.block{display:flex;border:1px solid #000;border-block-start-width:3px;font-size:3.2mm;line-height:1.3;margin-block-start:3mm}
.block>div{flex:1 1 auto;padding:1mm 2.2mm;border-inline-end:1px solid #000;min-inline-size:0}
.block>div:last-child{border-inline-end:0}
.block span{display:block;font-size:2.6mm;white-space:nowrap}
.qr{inline-size:22mm;block-size:22mm;flex:none}
.ltr{direction:ltr;unicode-bidi:isolate}
.tray th,.tray td{padding-block:0}
.tray tbody tr{block-size:var(--row)}
.tray .outline{inline-size:19mm;block-size:min(17mm,var(--row) - 1.2mm)}
.tray th[scope]{inline-size:73mm}
.tray td:nth-child(4){inline-size:28mm}
.count{font-size:6mm;font-weight:700}
.countin{display:flex;align-items:flex-end;column-gap:2mm;margin-block:4mm 0}
.line.wide{flex:1;max-inline-size:80mm}
.countin .line:last-child{min-inline-size:42mm}
.qrbox{display:flex;align-items:flex-end;column-gap:1.5mm}
.qrbox small{font-size:2.6mm;max-inline-size:32mm;text-align:end;white-space:nowrap;padding-block-end:2.6mm}
.part{font-weight:400}
.does>bdi{display:inline-block}
.hint{font-size:4.2mm;display:flex;justify-content:space-between;align-items:baseline;margin-block-end:1.5mm}
.hint small{font-weight:400}
.labels{display:grid;grid-template-columns:95mm 95mm;grid-auto-rows:33mm}
.label{display:flex;align-items:center;column-gap:1.5mm;padding:1mm 1.5mm;min-inline-size:0;--c:linear-gradient(#000 0 0) no-repeat;background:var(--c) 0 0/4mm 1px,var(--c) 0 0/1px 4mm,var(--c) 100% 0/4mm 1px,var(--c) 100% 0/1px 4mm,var(--c) 0 100%/4mm 1px,var(--c) 0 100%/1px 4mm,var(--c) 100% 100%/4mm 1px,var(--c) 100% 100%/1px 4mm}
.label .says{flex:1;min-inline-size:0}
.label p{line-height:1.18}
.label .place{line-height:1.15;margin-block-end:.6mm}
.label .line{min-inline-size:42mm}
.label{--t:1.05}
.label .outline{inline-size:17mm;block-size:16.3mm;flex:none}
.label .qr{margin-inline:-1mm 0}
.sum{font-size:10mm;font-weight:700;line-height:1.1;white-space:nowrap}
.lead{font-size:6mm;margin-block:6mm}
.money td,.money th{vertical-align:baseline;padding-block:1.3mm}
.facts{margin-block:5mm 6mm}
.held tbody th{inline-size:60mm}
.held td.nowrap{inline-size:42mm}
.sign{display:grid;grid-template-columns:40mm 1fr 1fr;column-gap:8mm;margin-block:auto 2mm;padding-block-start:8mm}
.sign .line{display:block}
.articles tbody th{inline-size:37mm}
.articles tfoot th{font-weight:400}
.articles tfoot tr:last-child>*{font-weight:700;font-size:5mm}
.run{font-size:3.5mm;line-height:1.314;display:flex;flex-direction:column;flex:1}
.run h1{font-size:10mm}
.run p{line-height:1.314}
.clock{font-size:10mm;font-weight:700;line-height:.95}
.stands{margin-block-end:1mm}
.out{display:flex;flex-wrap:wrap;align-items:center;gap:1mm 4mm;margin-block-end:1.5mm}
.out span{display:inline-flex;align-items:center;column-gap:1.5mm}
.plan td,.plan th{vertical-align:top;padding-block:.8mm .2mm}
.plan tbody tr{block-size:var(--row)}
.plan{table-layout:fixed}
.plan th:nth-child(1){inline-size:15mm}
.plan th:nth-child(2){inline-size:10mm}
.plan th:nth-child(3){inline-size:28mm}
.plan th:nth-child(4){inline-size:101mm}
.plan td:last-child{border-inline-start:1px solid #767676}
.plan th:last-child{padding-inline-start:2mm}
.plan p+p{margin-block-start:.8mm}
.two>div>:first-child{margin-block-start:1.5mm}
.two .dot{margin-block-end:.8mm}
em{font-style:normal}
.dot{padding-inline-start:4mm;position:relative}
.dot::before{content:"";position:absolute;inset-inline-start:.6mm;inset-block-start:1.9mm;inline-size:1mm;block-size:1mm;border-radius:50%;background:#000}
.more{font-size:2.8mm}
.two{display:grid;grid-template-columns:1fr 1fr;column-gap:8mm;margin-block-start:2mm}
.run h3{font-size:3.5mm;border-block-end:1px solid #000;padding-block-end:.6mm;margin-block:1.5mm 1.2mm}
.small th,.small td{padding-block:.4mm;padding-inline-end:2mm}
.small{margin-block-end:1mm}
.small tbody tr{border-block-end:0}
.small thead th{border-block-end:1px solid #000}
.readings{table-layout:fixed}
.readings th:first-child{inline-size:27mm}
.readings .num{white-space:normal}
.even{table-layout:fixed}
code{font:inherit;font-weight:700;direction:ltr;unicode-bidi:isolate}
.rota th,.rota td{padding:0 .8mm;text-align:center}
.rota th:first-child{text-align:start;padding-inline-start:0}
.where{table-layout:fixed}
.where tbody tr{block-size:var(--row)}
.where thead th{block-size:34mm;padding:0 0 1mm;vertical-align:bottom}
.where th:first-child{inline-size:48mm;line-height:1.05}
.where td{font-size:3.2mm;white-space:nowrap}
.where tbody tr{border-block-end:0}
.where tbody .third{border-block-end:1px solid #000}
.where tbody th{font-weight:400}
.up{writing-mode:vertical-rl;transform:rotate(180deg);display:inline-block;inline-size:33mm;text-align:start;line-height:1.15}
.across thead th{block-size:auto;text-align:center}
.whom{table-layout:fixed;line-height:1.24}
.whom small{line-height:inherit}
.whom th:first-child{inline-size:27mm}
.whom.down thead th{font-size:2.8mm;text-align:start}
.down th:first-child{inline-size:14mm}
.whom tbody th{font-weight:400}
.whom tbody tr,.plan tbody tr{border-block-end:1px solid #767676}
.whom thead th{border-block-end-width:1px}
.whom thead th:first-child{font-size:2.8mm}
.whom small{font-size:inherit}
.whom td,.whom th{vertical-align:top;text-align:start;padding:.7mm}

.whom thead th{font-size:4.2mm;padding-block:0 .6mm;vertical-align:bottom}
.legend{inline-size:54mm}
.promises{font-size:3.4mm;margin-block-start:3mm}
.d text{font-family:"Paper","Noto Sans",sans-serif;font-size:calc(8px*var(--k,1)*var(--t,1));fill:#000}
.d .b{font-weight:700}
.d .body{fill:#fff;stroke:#000;stroke-width:calc(.9px*var(--k,1));stroke-linejoin:round}
.d .edge{fill:#fff;stroke:#000;stroke-width:calc(.6px*var(--k,1));stroke-linejoin:round}
.d .in{fill:none;stroke:#000;stroke-width:calc(.45px*var(--k,1))}
.d .leg{fill:none;stroke:#000;stroke-width:calc(.9px*var(--k,1));stroke-linecap:round}
.d .bar{fill:none;stroke:#000;stroke-width:calc(2.2px*var(--k,1))}
.d .wire{fill:none;stroke:#000;stroke-width:calc(1.3px*var(--k,1));stroke-linejoin:round}
.d .strip{fill:none;stroke:#767676;stroke-width:calc(.4px*var(--k,1))}
.d .dot{fill:#000;r:calc(2.1px*var(--k,1))}
.wave{display:block}
.wave text{font-family:"Paper","Noto Sans",sans-serif;fill:#000}
.wave .b{font-weight:700}
.wave path{fill:none;stroke:#000}
.wave .div{stroke:#767676;stroke-width:.12px}
.wave .zero{stroke-width:.3px}
.wave .curve{stroke-width:.5px;stroke-linejoin:round}
.wave .fast{stroke-width:.2px}
@media print{.sheet{margin:0 auto}.sheet+.sheet{break-before:page}tr,figure,li{break-inside:avoid}thead{display:table-header-group}}
`.replace(/\n/g, "");
