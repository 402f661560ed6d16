// A QR code as one path, 22 mm wide with its quiet zone, beside which its text always stands.
//
// ISO/IEC 18004 asks for four modules of quiet zone on every side. Level M (15 % may be lost) suits a sheet that is folded and
// wetted; the coding is uqr's, the drawing ours: runs of one row join, so that a printer leaves no hairlines between modules.
// Does not know: what the text means.
import { encode } from "uqr";
import { type Html, html } from "./html.ts";

/** Modules of white around the code (ISO/IEC 18004). */
export const quietModules = 4;

/** A longer text would give modules too small for a phone (0.4 mm: common practice, no source). */
const mostSigns = 100;

/** @returns an SVG with class "qr"; the style sheet gives it its size. */
export function qrCode(text: string): Html {
  const { data, size } = encode(text.slice(0, mostSigns).replace(/[\ud800-\udfff]/gu, "\ufffd"), { ecc: "M", border: 0 });
  const whole = size + 2 * quietModules;
  return html`<svg class="qr" viewBox="0 0 ${whole} ${whole}" shape-rendering="crispEdges" role="img" aria-label="${text}"><path d="${path(data)}"/></svg>`;
}

function path(rows: readonly (readonly boolean[])[]): string {
  let d = "";
  rows.forEach((row, y) => {
    for (let x = 0; x < row.length; x += 1) {
      if (!row[x]) continue;
      const from = x;
      while (row[x + 1]) x += 1;
      d += `M${from + quietModules} ${y + quietModules}h${x - from + 1}v1H${from + quietModules}z`;
    }
  });
  return d;
}
