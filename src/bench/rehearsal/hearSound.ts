// What the ear makes of a buzzer: silent, or sounding with its pitch.
//
// A buzzer with its own circuit sounds when it has its voltage; one without needs a voltage that changes: by a tone or PWM at a
// pin, or by a program that switches it itself. Changes slower than about 20 Hz are single clicks (common practice).
// Does not know: loudness.
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
    if (!s.scene.on) return silent(s.from, s.to);
    if (sound.own && meanOf(s.scene, (p) => p.across(id)) >= sound.leastVolts)
      return { from: s.from, to: s.to, seen: "sounding", figures: {} };
    const hertz = sound.own ? null : switchedHertz(s.scene, id, sound.leastVolts);
    return hertz === null ? silent(s.from, s.to) : { from: s.from, to: s.to, seen: "sounding", figures: { hertz } };
  });
  return joinSpans(sound.own ? spans : withBeats(spans, id, sound.leastVolts, run));
}

/** The pitch of the pin whose switching swings the element most, or null if none swings it enough. */
function switchedHertz(scene: Scene, id: string, leastVolts: number): number | null {
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
  return best?.hertz ?? null;
}

/** Sound that the program makes by switching a pin itself: rises that follow each other fast enough. */
function withBeats(spans: readonly Span[], id: string, leastVolts: number, run: Run): readonly Span[] {
  const rises: number[] = [];
  let before = 0;
  for (const s of run.segments) {
    const volts = meanOf(s.scene, (p) => p.across(id));
    if (volts - before >= leastVolts) rises.push(s.from);
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
      sounds.push({ from: first, to: (rises[last] ?? 0) + gap, seen: "sounding", figures: { hertz } });
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
