// Outlines of parts, seen from above: thin black lines on white, the leg that matters marked.
//
// Units are tenths of a breadboard pitch (0.254 mm); each drawing is about its own zero and is true to size in itself.
// `outline` fits one into a picture of 52 by 50 units and tells the style sheet by how much it was made smaller (--k), so that
// lines and letters keep their width. Bodies are white and hide what lies under them; a filled dot is a leg or a wire's end.
// A kind without a drawing gets a neutral body with as many legs as nobody has to count: none.
// Does not know: values, papers, the breadboard's holes in detail.
import { type Html, html } from "./html.ts";

/** Half the picture's width and height in units. */
const halfWidth = 26;
const halfHeight = 25;
/** Small parts are drawn no larger than they are on the picture's own scale. */
const mostScale = 1;

interface Drawing {
  readonly shape: Html;
  /** Half the width and height that it needs, and where its middle lies. */
  readonly reach: readonly [width: number, height: number];
  readonly middle?: readonly [x: number, y: number];
}

/** @param item key of an item of stock; its first word decides. @returns an SVG with class "d outline". */
export function outline(item: string): Html {
  const kind = item.split(" ")[0] ?? "";
  const drawing = drawings[kind] ?? drawings[family[kind] ?? ""] ?? neutral;
  const [width, height] = drawing.reach;
  const scale = Math.min(mostScale, halfWidth / width, halfHeight / height);
  const [x, y] = drawing.middle ?? [0, 0];
  return html`<svg class="d outline" viewBox="${-halfWidth} ${-halfHeight} ${2 * halfWidth} ${2 * halfHeight}" aria-hidden="true"><g transform="scale(${round(scale)}) translate(${-x} ${-y})" style="--k:${round(1 / scale)}">${drawing.shape}</g></svg>`;
}

/** Whether an item has a drawing of its own kind. */
export function hasOutline(item: string): boolean {
  const kind = item.split(" ")[0] ?? "";
  return (drawings[kind] ?? drawings[family[kind] ?? ""]) !== undefined;
}

const round = (n: number) => Math.round(n * 1000) / 1000;

// ---- strokes
const path = (d: string, kind: string) => html`<path class="${kind}" d="${d}"/>`;
const circle = (x: number, y: number, r: number, kind: string) => html`<circle class="${kind}" cx="${x}" cy="${y}" r="${r}"/>`;
const box = (x: number, y: number, w: number, h: number, kind: string, rx = 0) =>
  html`<rect class="${kind}" x="${x}" y="${y}" width="${w}" height="${h}" rx="${rx}"/>`;
/** The end of a leg: its size follows the lines, not the part. */
const dot = (x: number, y: number) => html`<circle class="dot" cx="${x}" cy="${y}"/>`;
const mark = (x: number, y: number, text: string, anchor: "start" | "middle" | "end" = "middle") =>
  html`<text class="b" x="${x}" y="${y}" text-anchor="${anchor}">${text}</text>`;
const range = (n: number) => Array.from({ length: n }, (_, i) => i);

// ---- small parts, put into the breadboard
const resistor = html`${path("M0 -20V20", "leg")}${box(-4.6, -12.4, 9.2, 24.8, "body", 3)}${path("M-4.6 -7h9.2M-4.6 -3h9.2M-4.6 1h9.2M-4.6 7.5h9.2", "in")}${dot(0, -20)}${dot(0, 20)}`;
const inductor = html`${path("M0 -20V20", "leg")}${box(-5, -13, 10, 26, "body", 5)}${path("M-5 -8h10M-5 -4.5h10M-5 -1h10M-5 2.5h10M-5 6h10", "in")}${dot(0, -20)}${dot(0, 20)}`;
/** Flat rim and a bar on the cathode's side, plus at the long leg. */
const ledRim = "M-8.9 -7.3A11.5 11.5 0 1 0 8.9 -7.3Z";
const led = html`${path(ledRim, "body")}${circle(0, 0, 8.2, "in")}${path("M-5 -9.8h10", "leg")}${dot(0, -5)}${dot(0, 5)}${mark(14, 12, "+")}`;
const rgbLed = html`${path(ledRim, "body")}${circle(0, 0, 8.2, "in")}${path("M-15 0H15", "in")}${[-15, -5, 5, 15].map((x) => dot(x, 0))}${mark(-5, 21, "C")}`;
const diode = html`${path("M0 -20V20", "leg")}${box(-4.6, -10, 9.2, 20, "body", 1)}${path("M-4.6 -6.5h9.2", "bar")}${dot(0, -20)}${dot(0, 20)}`;
const photoresistor = html`${circle(0, 0, 10, "body")}${path("M-6 -3h9a1.5 1.5 0 0 1 0 3h-6a1.5 1.5 0 0 0 0 3h9", "in")}${path("M-8.6 -5V5M8.6 -5V5", "in")}${dot(0, -5)}${dot(0, 5)}`;
const thermistor = html`${path("M-7 -6A7.5 7.5 0 1 1 7 -6L5 2H-5Z", "body")}${mark(0, -3.5, "θ")}${path("M-3 2L-5 14M3 2L5 14", "leg")}${dot(-5, 14)}${dot(5, 14)}`;
const button = html`${path("M-15 -10H15M-15 10H15", "leg")}${box(-11.8, -11.8, 23.6, 23.6, "body", 1.5)}${circle(0, 0, 6.9, "in")}${path("M-11.8 -10h4M7.8 -10h4M-11.8 10h4M7.8 10h4", "in")}${[-15, 15].map((x) => [dot(x, -10), dot(x, 10)])}`;
const slideSwitch = html`${path("M-10 4V13M0 4V13M10 4V13", "leg")}${box(-21, -14, 42, 18, "body", 1)}${box(-17, -9.5, 34, 9, "in")}${box(-15, -9.5, 12, 9, "body")}${path("M-12 -9.5v9M-9 -9.5v9M-6 -9.5v9", "in")}${[-10, 0, 10].map((x) => dot(x, 13))}`;
const tube = html`${path("M-20 0H20", "leg")}${box(-12, -4.5, 24, 9, "body", 4)}${path("M-6 1.5H1M-1 -1.5H6", "in")}${dot(-20, 0)}${dot(20, 0)}`;
const potentiometer = html`${path("M-20 14V34M0 14V34M20 14V34", "leg")}${circle(0, -8, 31, "body")}${circle(0, -8, 12, "in")}${path("M-2.5 -19V3M2.5 -19V3", "in")}${[-20, 0, 20].map((x) => dot(x, 34))}`;
const buzzer = html`${circle(0, 0, 23, "body")}${circle(0, 0, 4, "in")}${dot(-15, 0)}${dot(15, 0)}${mark(-15, -6, "+")}`;
const transistor = html`${path("M-9.5 3H9.5A10.5 10.5 0 1 0 -9.5 3Z", "body")}${path("M-7 3L-10 14M0 3V14M7 3L10 14", "leg")}${[-10, 0, 10].map((x) => dot(x, 14))}`;
const chip = html`${range(8).map((i) => path(`M-15 ${10 * i - 35}H-12.5M12.5 ${10 * i - 35}H15`, "leg"))}${path("M-12.5 -39H-4A4 4 0 0 0 4 -39H12.5V39H-12.5Z", "body")}${range(8).map((i) => [dot(-15, 10 * i - 35), dot(15, 10 * i - 35)])}`;
const ceramic = html`${path("M-5 8V18M5 8V18", "leg")}${circle(0, -2, 11, "body")}${dot(-5, 18)}${dot(5, 18)}`;
const electrolytic = html`${circle(0, 0, 15, "body")}${path("M6 -13.7V13.7M9.5 -11.6V11.6", "in")}${path("M7.8 -10V10", "leg")}${dot(-5, 0)}${dot(5, 0)}${mark(-10, -4, "+")}`;
const wire = html`${path("M-18 6C-10 6 -9 -6 0 -6S10 6 18 6", "wire")}${dot(-18, 6)}${dot(18, 6)}`;

// ---- larger things, beside the breadboard
const servo = html`${box(-46, -23, 92, 46, "body", 1)}${path("M-46 -23H-64V23H-46M46 -23H64V23H46", "in")}${circle(-55, 0, 3, "in")}${circle(55, 0, 3, "in")}${circle(23, 0, 22.5, "in")}${path("M19 -9L8 -42A5 5 0 0 1 18 -45L28 -9Z", "body")}${circle(23, 0, 4, "in")}${path("M-46 11H-74M-46 0H-74M-46 -11H-74", "leg")}`;
const motor = html`${box(-48, -38, 96, 76, "body")}${path("M-48 -19H-60V19H-48M48 -8H60V8H48M60 -3H92V3H60", "in")}${mark(0, 6, "M")}${path("M-60 -12H-72M-60 12H-72", "leg")}`;
const stepper = html`${path("M-46 -30L-68 -20A14 14 0 0 0 -68 20L-46 30M46 -30L68 -20A14 14 0 0 1 68 20L46 30", "in")}${circle(0, 0, 55, "body")}${circle(-68, 0, 7, "in")}${circle(68, 0, 7, "in")}${circle(0, -26, 9, "in")}${path("M-3.5 -34V-18M3.5 -34V-18", "in")}${box(-28, 52, 56, 14, "body")}`;
const relay = html`${box(-90, -48, 180, 96, "body", 1)}${box(-36, -32, 76, 64, "in")}${box(58, -42, 26, 84, "in")}${[-28, 0, 28].map((y) => [circle(71, y, 8, "in"), path(`M65 ${y}h12`, "in")])}${[-10, 0, 10].map((y) => dot(-80, y))}`;
const ultrasonic = html`${box(-88, -39, 176, 78, "body", 1)}${[-50, 50].map((x) => [circle(x, -4, 31, "body"), circle(x, -4, 25, "in"), path(`M${x - 18} -4H${x + 18}M${x} -22V14`, "in")])}${[-15, -5, 5, 15].map((x) => dot(x, 33))}`;
const display = html`${box(-157, -71, 314, 142, "body", 1)}${box(-140, -47, 280, 94, "in")}${box(-127, -32, 254, 62, "in")}${path(
  `M-127 -1H127${range(15)
    .map((i) => `M${Math.round(15.9 * (i + 1) - 127)} -32V30`)
    .join("")}`,
  "strip",
)}`;
const breadboard = html`${box(-70, -105, 140, 210, "edge", 3)}${path(
  `${range(15)
    .map((i) => `M-38 ${14 * i - 98}H-8M8 ${14 * i - 98}H38`)
    .join("")}`,
  "strip",
)}${path("M-60 -98V98M-50 -98V98M50 -98V98M60 -98V98", "strip")}${path("M0 -105V105", "in")}`;
/** The board is its two pin rows on a plain body; the plug's end is above. */
const board = html`${box(-52, -66, 104, 140, "edge", 2)}${box(-22, -78, 34, 24, "edge")}${box(-48, -34, 9, 50, "body")}${box(-48, 22, 9, 48, "body")}${box(39, -54, 9, 60, "body")}${box(39, 10, 9, 60, "body")}`;
const cable = html`${path("M-40 0C-18 0 -22 -22 0 -22S22 22 0 22S-14 4 8 4H36", "wire")}${box(-62, -9, 24, 18, "body", 1)}${box(-76, -6, 14, 12, "in")}${box(36, -7, 24, 22, "body", 1)}${box(60, -3, 12, 14, "in")}`;
const battery9v = html`${box(-52, -80, 104, 190, "body", 3)}${circle(-22, -82, 11, "body")}${path("M14 -72V-88L19 -92H29L34 -88V-72", "body")}${path("M-52 -68H52", "in")}${mark(-22, -46, "+")}${mark(24, -46, "−")}`;
const battery4aa = html`${box(-125, -118, 250, 236, "edge", 3)}${range(4).map((i) => [box(-100, 56 * i - 108, 192, 48, "body", 4), box(92, 56 * i - 94, 8, 20, "in")])}`;
const powerBank = html`${box(-60, -110, 120, 220, "body", 16)}${box(-26, -98, 34, 14, "in")}${circle(34, -91, 5, "in")}${path("M-16 92H16", "in")}`;
const adapter = html`${box(-60, -46, 96, 92, "body", 6)}${path("M36 -26H72M36 26H72", "leg")}${path("M-60 0C-90 0 -86 50 -110 50", "wire")}`;
const computer = html`${box(-90, -80, 180, 112, "edge", 3)}${box(-80, -70, 160, 92, "in")}${path("M-90 32L-108 74H108L90 32Z", "body")}${path("M-78 46H78M-84 58H84", "in")}`;
const meter = html`${box(-48, -82, 96, 164, "body", 8)}${box(-34, -68, 68, 38, "in")}${circle(0, 12, 26, "in")}${path("M0 12V-12", "leg")}${[-28, 0, 28].map((x) => circle(x, 62, 5, "in"))}`;
const module = html`${box(-40, -34, 80, 60, "body", 1)}${box(-18, -22, 36, 24, "in")}${[-10, 0, 10].map((x) => dot(x, 20))}`;

const drawings: Readonly<Record<string, Drawing>> = {
  resistor: { shape: resistor, reach: [12, 23] },
  inductor: { shape: inductor, reach: [12, 23] },
  led: { shape: led, reach: [20, 18], middle: [1, 0] },
  "rgb-led": { shape: rgbLed, reach: [20, 22], middle: [0, 4] },
  diode: { shape: diode, reach: [12, 23] },
  photoresistor: { shape: photoresistor, reach: [14, 14] },
  thermistor: { shape: thermistor, reach: [14, 17] },
  button: { shape: button, reach: [18, 16] },
  "slide-switch": { shape: slideSwitch, reach: [24, 16] },
  "tilt-switch": { shape: tube, reach: [23, 8] },
  potentiometer: { shape: potentiometer, reach: [33, 39], middle: [0, -1] },
  buzzer: { shape: buzzer, reach: [25, 25] },
  transistor: { shape: transistor, reach: [14, 14], middle: [0, 3] },
  chip: { shape: chip, reach: [19, 41] },
  capacitor: { shape: ceramic, reach: [16, 19], middle: [0, 3] },
  electrolytic: { shape: electrolytic, reach: [18, 18] },
  wire: { shape: wire, reach: [22, 10] },
  servo: { shape: servo, reach: [78, 50], middle: [-5, -12] },
  "dc-motor": { shape: motor, reach: [90, 42], middle: [10, 0] },
  stepper: { shape: stepper, reach: [86, 66], middle: [0, 5] },
  relay: { shape: relay, reach: [94, 52] },
  ultrasonic: { shape: ultrasonic, reach: [92, 44] },
  "display-16x2": { shape: display, reach: [162, 76] },
  breadboard: { shape: breadboard, reach: [76, 112] },
  board: { shape: board, reach: [60, 84], middle: [0, -2] },
  "usb-cable": { shape: cable, reach: [80, 30] },
  "battery-9v": { shape: battery9v, reach: [58, 106], middle: [0, 8] },
  "battery-4aa": { shape: battery4aa, reach: [130, 124] },
  "power-bank": { shape: powerBank, reach: [66, 116] },
  adapter: { shape: adapter, reach: [98, 56], middle: [-18, 4] },
  computer: { shape: computer, reach: [114, 84], middle: [0, -2] },
  multimeter: { shape: meter, reach: [54, 88] },
  module: { shape: module, reach: [46, 40], middle: [0, -4] },
};

/** Kinds that look like another one from above. */
const family: Readonly<Record<string, string>> = {
  phototransistor: "led",
  zener: "diode",
  schottky: "diode",
  npn: "transistor",
  pnp: "transistor",
  nmos: "transistor",
  "temperature-10mv": "transistor",
  piezo: "buzzer",
  "active-buzzer": "buzzer",
  "magnetic-buzzer": "buzzer",
  speaker: "buzzer",
  "reed-switch": "tilt-switch",
  "74HC595": "chip",
  ULN2003A: "chip",
  L293D: "chip",
  "seven-segment": "module",
  "bar-graph": "module",
  motion: "module",
  "ir-receiver": "module",
  humidity: "module",
  joystick: "module",
  keypad: "module",
};

/** A body that claims nothing. */
const neutral: Drawing = { shape: html`${box(-20, -14, 40, 28, "body", 2)}`, reach: [24, 18] };
