// A waveform as a drawing for paper: black lines on a frame of divisions, 1-2-5 volts or amperes up and milliseconds across.
//
// As on the instrument, time runs from left to right in every language, and what a division stands for is written above. What
// changes faster than lines can be told apart is drawn as a box of upright lines. Curves lie thick over thin divisions, so that a
// copier keeps them.
// Does not know: how the waveform was worked out, where on the paper it stands.
import { probeName, type Trace, type TracedProbe } from "../bench/rehearsal/index.ts";
import { formatAmount, formatNumber, type Language, say } from "../language/index.ts";
import { type Html, html } from "./html.ts";
import { across, scaleLines, waveScale } from "./waveScale.ts";
import { waveShape } from "./waveShape.ts";

export interface FigureSize {
  /** mm of the whole figure; letters, mm. */
  readonly width: number;
  readonly height: number;
  readonly letter: number;
}

/** mm between curves that can still be told apart on a copy. */
const finest = 0.8;

/** @returns an SVG of one probe of a trace; its text says the scales. A probe without points gives the empty frame. */
export function waveformFigure(trace: Trace, probe: TracedProbe, language: Language, size: FigureSize): Html {
  const { width, height, letter } = size;
  const scale = waveScale(probe.least, probe.most);
  const [left, right, top, bottom] = [letter * 4.4, width - letter * 0.6, letter * 1.9, height - letter * 1.7];
  const stepMs = (trace.toMs - trace.fromMs) / across;
  const x = (seconds: number) => left + ((right - left) * (seconds * 1000 - trace.fromMs)) / (trace.toMs - trace.fromMs);
  const y = (value: number) => bottom - ((bottom - top) * (value - scale.low)) / (scale.high - scale.low);
  const mm = (value: number) => String(Number(value.toFixed(2)));
  const lines = scaleLines(scale);
  // Letters need their own height; where the lines are closer, only some are named.
  const gap = (bottom - top) / Math.max(1, lines.length - 1);
  const every = Math.max(1, Math.ceil((letter * 1.15) / gap));
  const shape = waveShape(probe.points, probe.gaps, Math.max(1, Math.round((right - left) / finest)));
  const upwards = lines.map((value, i) => {
    const named = i % every === 0;
    return html`<path class="${value === 0 ? "zero" : "div"}" d="M${mm(left)} ${mm(y(value))}H${mm(right)}"/>${named ? html`<text x="${mm(left - letter * 0.4)}" y="${mm(y(value) + letter * 0.35)}" text-anchor="end" style="font-size:${mm(letter)}px">${formatAmount(language, value, probe.unit)}</text>` : null}`;
  });
  const isLong = stepMs * across >= 2000;
  const sideways = Array.from({ length: across + 1 }, (_, n) => {
    const ms = trace.fromMs + n * stepMs;
    const label = formatNumber(language, Number((isLong ? ms / 1000 : ms).toFixed(isLong ? 3 : 2)));
    const words = n === across ? `${label} ${isLong ? "s" : "ms"}` : label;
    const anchor = n === across ? "end" : n === 0 ? "start" : "middle";
    return html`<path class="div" d="M${mm(x(ms / 1000))} ${mm(top)}V${mm(bottom)}"/>${n % 5 === 0 ? html`<text x="${mm(x(ms / 1000))}" y="${mm(bottom + letter * 1.3)}" text-anchor="${anchor}" style="font-size:${mm(letter)}px">${words}</text>` : null}`;
  });
  const boxes = shape.boxes.map(({ from, to, least, most }) => {
    const count = Math.max(1, Math.floor((x(to) - x(from)) / finest));
    const strokes = Array.from(
      { length: count },
      (_, n) => `M${mm(x(from) + (n + 0.5) * finest)} ${mm(y(most))}V${mm(y(least))}`,
    );
    return html`<path class="curve" d="M${mm(x(from))} ${mm(y(most))}H${mm(x(to))}V${mm(y(least))}H${mm(x(from))}Z"/><path class="fast" d="${strokes.join("")}"/>`;
  });
  const curves = shape.lines.map((points) => {
    const path = points.map(([s, value], i) => `${i === 0 ? "M" : "L"}${mm(x(s))} ${mm(y(value))}`).join("");
    return html`<path class="curve" d="${path}"/>`;
  });
  const scales = say(language, "wave.scales", {
    place: probeName(probe),
    up: formatAmount(language, scale.step, probe.unit),
    along: formatAmount(language, stepMs / 1000, "s"),
  });
  return html`<svg class="wave" viewBox="0 0 ${mm(width)} ${mm(height)}" width="${mm(width)}mm" height="${mm(height)}mm" style="direction:ltr" role="img"><title>${scales}</title><text class="b" x="${mm(left)}" y="${mm(letter * 1.1)}" style="font-size:${mm(letter)}px">${scales}</text>${sideways}${upwards}${boxes}${curves}</svg>`;
}
