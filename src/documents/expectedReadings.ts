// What a meter shows on a correct build, chosen for one small table: points down, moments across.
//
// A rehearsal gives readings of every net at many moments. A teacher with one meter needs few: moments at which something
// differs, points that change before points that do not. A point is called by the board's pin or by the parts that meet there.
// Does not know: papers.
import type { Lesson, Net } from "../bench/lesson/index.ts";
import type { MeterReading } from "../bench/rehearsal/index.ts";
import { type Language, say, sayUnchecked } from "../language/index.ts";

export interface ExpectedReadings {
  /** "3 s, LDR1 at 8 lx". */
  readonly moments: readonly string[];
  /** "D9", "R1–LED1", with V against GND at each moment; null where it was not read. */
  readonly points: readonly { readonly name: string; readonly volts: readonly (number | null)[] }[];
}

const momentsMost = 3;
const pointsMost = 6;
/** V: less is no difference on a cheap meter's 20 V range, with the spread of parts. */
const difference = 0.15;

/** @returns the table, with no points where nothing was read. */
export function expectedReadings(lesson: Lesson, readings: readonly MeterReading[], language: Language): ExpectedReadings {
  const nets = lesson.nets.filter((net) => !net.legs.some((l) => l.part === "board" && l.leg === "GND"));
  const at = (net: Net, ms: number) =>
    readings.find((r) => r.ms === ms && net.legs.some((l) => l.part === r.at.part && l.leg === r.at.leg))?.volts ?? null;
  const differ = (net: Net, a: number, b: number) => Math.abs((at(net, a) ?? 0) - (at(net, b) ?? 0)) >= difference;
  const moments: number[] = [];
  for (const ms of [...new Set(readings.map((r) => r.ms))].sort((a, b) => a - b))
    if (moments.length < momentsMost && moments.every((other) => nets.some((net) => differ(net, ms, other)))) moments.push(ms);
  const changes = (net: Net) => moments.some((ms) => differ(net, ms, moments[0] ?? ms));
  const known = nets.filter((net) => moments.some((ms) => at(net, ms) !== null));
  const chosen = [...known].sort((a, b) => Number(changes(b)) - Number(changes(a))).slice(0, pointsMost);
  return {
    moments: moments.map((ms) => momentName(lesson, ms, language)),
    points: known
      .filter((net) => chosen.includes(net))
      .map((net) => ({ name: pointName(net), volts: moments.map((ms) => at(net, ms)) })),
  };
}

/** "4.7": one decimal, as a meter's 20 V range is read aloud. */
export function shownVolts(language: Language, value: number | null): string {
  if (value === null) return "—";
  const digits = { minimumFractionDigits: 1, maximumFractionDigits: 1 };
  // No minus before a nought.
  return new Intl.NumberFormat(language.intl, digits).format(Math.abs(value) < 0.05 ? 0 : value);
}

/** The board's pin where there is one, else the parts that meet there. */
function pointName(net: Net): string {
  const pin = net.legs.find((l) => l.part === "board");
  return pin ? pin.leg : net.legs.map((l) => l.part).join("–");
}

/** The time, and what was last set from outside: "3 s, LDR1 at 8 lx". */
function momentName(lesson: Lesson, ms: number, language: Language): string {
  const states = new Map<string, string>();
  for (const step of lesson.stimuli.filter((s) => s.at * 1000 <= ms))
    for (const s of step.stimuli) {
      if (s.kind !== "state" || language.text(`state.${s.state}`) === null) continue;
      const data = { part: s.part, on: String(s.value), [s.state]: s.value };
      states.set(`${s.part}.${s.state}`, sayUnchecked(language, `state.${s.state}`, data));
    }
  return [say(language, "runSheet.atMoment", { ms }), ...[...states.values()].slice(0, 2)].join(", ");
}
