// What the driver printed, brought into the form in which our own run answers.
//
// The chip knows levels only: a tone is a pin that turns round at an even pace, a servo is a pin that is high for about a
// millisecond every twenty. Which pins are which is told by our own run, the figures come from the chip.
// Does not know: how either was run.

export interface ChipRun {
  readonly text: string;
  /** Changes of outputs, without those that belong to tones and servos. */
  readonly pins: readonly { readonly ms: number; readonly pin: string; readonly level: "low" | "high" }[];
  readonly tones: readonly { readonly ms: number; readonly endMs: number; readonly pin: string; readonly hz: number }[];
  /** Pulse widths where they changed. */
  readonly servos: readonly { readonly ms: number; readonly pin: string; readonly micros: number }[];
  readonly pwm: readonly { readonly ms: number; readonly pin: string; readonly value: number }[];
}

const units: Readonly<Record<string, string>> = { "1": "D6", "2": "D5", "3": "D9", "4": "D10", "5": "D11", "6": "D3" };

export function readPrinted(printed: string, sounding: ReadonlySet<string>, turning: ReadonlySet<string>): ChipRun {
  const bytes: number[] = [];
  const pins: { ms: number; pin: string; level: "low" | "high" }[] = [];
  const turns = new Map<string, { at: number; level: number }[]>();
  const pwm: { ms: number; pin: string; value: number }[] = [];
  for (const row of printed.split("\n")) {
    const [cycle, what, value, more] = row.split(" ");
    if (what === undefined || what === "end") continue;
    const ms = Number(cycle) / 16000;
    if (what === "T") for (let i = 0; i < value!.length; i += 2) bytes.push(Number.parseInt(value!.slice(i, i + 2), 16));
    else if (what === "P") pwm.push({ ms, pin: units[value!]!, value: Number(more) });
    else if (sounding.has(what) || turning.has(what))
      turns.set(what, [...(turns.get(what) ?? []), { at: ms, level: Number(value) }]);
    else pins.push({ ms, pin: what, level: value === "1" ? "high" : "low" });
  }
  return {
    text: new TextDecoder().decode(new Uint8Array(bytes)),
    pins,
    tones: [...turns].filter(([pin]) => sounding.has(pin)).flatMap(([pin, list]) => tonesOf(pin, list)),
    servos: [...turns].filter(([pin]) => turning.has(pin)).flatMap(([pin, list]) => widthsOf(pin, list)),
    pwm: pwm.filter((p, i) => i === 0 || pwm[i - 1]!.value !== p.value || pwm[i - 1]!.pin !== p.pin),
  };
}

/** Runs of changes at one pace, within a hundredth. */
function tonesOf(pin: string, list: readonly { at: number; level: number }[]): ChipRun["tones"] {
  const tones: { ms: number; endMs: number; pin: string; hz: number }[] = [];
  let start = 0;
  for (let i = 1; i <= list.length; i += 1) {
    const half = i - start > 1 ? (list[i - 1]!.at - list[start]!.at) / (i - 1 - start) : null;
    const gap = i < list.length ? list[i]!.at - list[i - 1]!.at : Number.POSITIVE_INFINITY;
    if (half === null ? gap < 50 : Math.abs(gap - half) < 0.01 + half * 0.02) continue;
    if (half !== null && i - start > 4) tones.push({ ms: list[start]!.at - half, endMs: list[i - 1]!.at, pin, hz: 500 / half });
    start = i;
  }
  return tones;
}

function widthsOf(pin: string, list: readonly { at: number; level: number }[]): ChipRun["servos"] {
  const widths: { ms: number; pin: string; micros: number }[] = [];
  for (let i = 1; i < list.length; i += 1) {
    if (list[i]!.level !== 0 || list[i - 1]!.level !== 1) continue;
    const micros = Math.round((list[i]!.at - list[i - 1]!.at) * 1000);
    const last = widths.at(-1);
    if (!last || Math.abs(last.micros - micros) > 6) widths.push({ ms: list[i - 1]!.at, pin, micros });
  }
  return widths;
}
