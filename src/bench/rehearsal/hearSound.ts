// What the ear makes of a buzzer: silent, or sounding with its pitch.
//
// A buzzer with its own circuit sounds when it has its voltage; one without needs a voltage that changes: by a tone or PWM at a
// pin, or by a program that switches it itself. Changes slower than about 20 Hz are single clicks (common practice).
//
// How loud it is follows from how far the voltage swings beyond what is just heard, in decibels, 20 dB more at its resonance; under
// 6 dB it is faint, from 23 dB on loud. So a piezo on a pin is clear at 440 Hz and loud at 3 kHz, as in class. The borders are our
// own, from memory: 6 dB is twice the pressure, 20 dB what a disc gains at its resonance.
// Does not know: rooms, cases, who is talking.
import { elementId, type Noticing } from "../parts/index.ts";
import { meanOf, type Run, type Scene } from "./run.ts";
import { joinSpans, type Span } from "./span.ts";

type Sound = Extract<Noticing, { sense: "sound" }>;

/** Hz. Slower changes are clicks. */
const leastAudibleHertz = 20;

export function hearSound(part: string, sound: Sound, run: Run): readonly Span[] {
  const id = elementId(part, sound.element);
  const silent = (from: number, to: number): Span => ({ from, to, seen: "silent", figures: {} });
  const spans = run.segments.map((s): Span => {
    const { from, to } = s;
    if (!s.scene.on) return silent(from, to);
    const volts = sound.own ? meanOf(s.scene, (p) => p.across(id)) : 0;
    if (sound.own) {
      if (volts < sound.leastVolts) return silent(from, to);
      return { from, to, seen: "sounding", figures: { loudness: loudnessOf(sound, volts, null) } };
    }
    const heard = switchedSound(s.scene, id, sound.leastVolts);
    if (!heard) return silent(from, to);
    const { hertz, swing } = heard;
    return { from, to, seen: "sounding", figures: { hertz, loudness: loudnessOf(sound, swing, hertz) } };
  });
  return withoutGaps(joinSpans(sound.own ? spans : withBeats(spans, id, sound, run)));
}

/** dB over what is just heard from which a sound is clear, and from which it is loud; dB that a resonance adds. */
const clearDecibels = 6;
const loudDecibels = 23;
const resonanceDecibels = 20;

/** @param swing V from the least to the most, or of a part that sounds by itself. @returns the number of the word in `loudnessWords`. */
export function loudnessOf(sound: Sound, swing: number, hertz: number | null): number {
  const [from, to] = sound.resonance ?? [Number.POSITIVE_INFINITY, 0];
  const resonates = sound.own || (hertz !== null && hertz >= from && hertz <= to);
  const decibels = 20 * Math.log10(swing / sound.leastVolts) + (resonates ? resonanceDecibels : 0);
  return decibels < clearDecibels ? 0 : decibels < loudDecibels ? 1 : 2;
}

/** s. A shorter silence between two sounds of one pitch nobody hears (gap detection of the ear: some milliseconds, from memory). */
const unheardSeconds = 0.005;

/** Sounds that are parted by a silence too short to be heard are one. */
function withoutGaps(spans: readonly Span[]): readonly Span[] {
  const heard = spans.map((span, i) => {
    const [before, after] = [spans[i - 1], spans[i + 1]];
    const isGap = span.seen === "silent" && span.to - span.from < unheardSeconds && before && after;
    return isGap && before.figures.hertz === after.figures.hertz && before.seen === "sounding" && after.seen === "sounding"
      ? { ...span, seen: before.seen, figures: before.figures }
      : span;
  });
  return joinSpans(heard);
}

/** Pitch and swing of the pin whose switching swings the element most, or null if none swings it enough. */
function switchedSound(scene: Scene, id: string, leastVolts: number): { swing: number; hertz: number } | null {
  let best: { swing: number; hertz: number } | null = null;
  for (const { pin, hertz } of scene.switching) {
    const side = (level: string) => {
      const phases = scene.phases.filter((p) => p.state.drives[pin] === level);
      const share = phases.reduce((sum, p) => sum + p.share, 0);
      return share > 0 ? phases.reduce((sum, p) => sum + p.share * p.point.across(id), 0) / share : 0;
    };
    const swing = Math.abs(side("1") - side("0"));
    if (hertz >= leastAudibleHertz && swing >= leastVolts && swing > (best?.swing ?? 0)) best = { swing, hertz };
  }
  return best;
}

/** Sound that the program makes by switching a pin itself: rises that follow each other fast enough. */
function withBeats(spans: readonly Span[], id: string, sound: Sound, run: Run): readonly Span[] {
  const rises: number[] = [];
  const swings: number[] = [];
  let before = 0;
  for (const s of run.segments) {
    const volts = meanOf(s.scene, (p) => p.across(id));
    if (volts - before >= sound.leastVolts) {
      rises.push(s.from);
      swings.push(volts - before);
    }
    before = volts;
  }
  const sounds: Span[] = [];
  for (let i = 0; i + 2 < rises.length; ) {
    const first = rises[i] ?? 0;
    const gap = (rises[i + 1] ?? 0) - first;
    let last = i + 1;
    // The same pitch as long as the gaps agree within a semitone's quarter, 1.5 %, or 20 µs.
    while (last + 1 < rises.length && Math.abs((rises[last + 1] ?? 0) - (rises[last] ?? 0) - gap) <= Math.max(0.015 * gap, 2e-5))
      last += 1;
    const count = last - i;
    if (count >= 3 && gap > 0 && 1 / gap >= leastAudibleHertz) {
      const hertz = count / ((rises[last] ?? 0) - first);
      const loudness = loudnessOf(sound, Math.max(...swings.slice(i, last + 1)), hertz);
      sounds.push({ from: first, to: (rises[last] ?? 0) + gap, seen: "sounding", figures: { hertz, loudness } });
      i = last;
    } else i += 1;
  }
  return sounds.length === 0 ? spans : overlay(spans, sounds);
}

function overlay(below: readonly Span[], above: readonly Span[]): readonly Span[] {
  let out: readonly Span[] = below;
  for (const sound of above)
    out = out
      .flatMap((s) =>
        s.to <= sound.from || s.from >= sound.to
          ? [s]
          : [
              { ...s, to: sound.from },
              { ...s, from: sound.to },
            ],
      )
      .filter((s) => s.to > s.from)
      .concat(sound)
      .sort((a, b) => a.from - b.from);
  return out;
}
