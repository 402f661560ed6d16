// Everything that a person could notice in a run, as spans of time by part.
//
// Does not know: what was expected, sentences.
import { elementId, type Noticing } from "../parts/index.ts";
import type { Build, BuiltPart } from "./build.ts";
import { speedOf } from "./followParts.ts";
import { hearSound } from "./hearSound.ts";
import { meanOf, type Run } from "./run.ts";
import { seeLight } from "./seeLight.ts";
import { seeSteps } from "./seeSteps.ts";
import { seeTrembling } from "./seeTrembling.ts";
import { joinSpans, type Span } from "./span.ts";

/** Part ("LED1", or "SEG1.a" where a part has several lights, or "board") → spans without gaps from 0 to the end. */
export type Perceived = ReadonlyMap<string, readonly Span[]>;

export function perceive(build: Build, run: Run): Perceived {
  const seen = new Map<string, readonly Span[]>([["board", boardSpans(run)]]);
  for (const part of build.parts.values()) for (const [name, spans] of ofPart(part, run)) seen.set(name, spans);
  return seen;
}

function ofPart(part: BuiltPart, run: Run): [name: string, spans: readonly Span[]][] {
  return part.kind
    .noticed(part.values)
    .map((noticed) => [
      noticed.sense === "light" ? elementId(part.name, noticed.element) : part.name,
      spansOf(part, noticed, run),
    ]);
}

function spansOf(part: BuiltPart, noticed: Noticing, run: Run): readonly Span[] {
  switch (noticed.sense) {
    case "light":
      return seeLight(part.name, noticed, run);
    case "sound":
      return hearSound(part.name, noticed, run);
    case "angle":
      return angleSpans(part.name, run);
    case "turning":
      return stateSpans(run, (scene) => {
        const id = elementId(part.name, noticed.element);
        const amps = meanOf(scene, (p) => p.amps(id));
        // A motor that is followed in time turns when its shaft does; else what it takes tells.
        const speed = speedOf(scene, id) === null ? null : meanOf(scene, (p) => p.speed(id) ?? 0);
        const isHeld = scene.states.get(part.name)?.held === true;
        if (speed === null) return turning(amps, noticed.startAmps, isHeld);
        if (Math.abs(speed) >= seenSpeed) return speed > 0 ? "turning" : "turning back";
        return Math.abs(amps) >= noticed.startAmps ? "stalled" : "stopped";
      });
    case "steps":
      return seeSteps(run.steps.get(part.name) ?? [], run.end);
    case "contact":
      return stateSpans(run, (scene) => (scene.states.get(part.name)?.pulled === true ? "on" : "off"));
  }
}

/** rad/s of a small motor's shaft below which a person does not call it turning: a quarter of a turn in a second. Our choice. */
const seenSpeed = 1.5;

function turning(amps: number, startAmps: number, held: boolean): Span["seen"] {
  if (Math.abs(amps) < startAmps) return "stopped";
  if (held) return "stalled";
  return amps > 0 ? "turning" : "turning back";
}

function stateSpans(run: Run, seen: (scene: Run["segments"][number]["scene"]) => Span["seen"]): readonly Span[] {
  return joinSpans(run.segments.map((s) => ({ from: s.from, to: s.to, seen: seen(s.scene), figures: {} })));
}

function angleSpans(part: string, run: Run): readonly Span[] {
  const moves = run.moves.get(part) ?? [];
  const spans = joinSpans(
    moves.flatMap((move, i): Span[] => {
      const to = Math.min(run.end, move.to, moves[i + 1]?.from ?? run.end);
      const degrees = Math.round(move.fromDegrees);
      if (move.stalled) return [{ from: move.from, to, seen: "stalled", figures: { degrees } }];
      if (move.fromDegrees !== move.toDegrees)
        return [{ from: move.from, to, seen: "moving", figures: { degrees: Math.round(move.toDegrees) } }];
      return [{ from: move.from, to, seen: `${degrees} degrees`, figures: { degrees } }];
    }),
  );
  return seeTrembling(spans, moves);
}

function boardSpans(run: Run): readonly Span[] {
  const spans: Span[] = [];
  let from = 0;
  for (const pause of run.pauses) {
    spans.push({ from, to: pause.from, seen: "running", figures: {} });
    from = Math.min(run.end, pause.to);
    spans.push({ from: pause.from, to: from, seen: pause.why === "reset" ? "resets" : "off", figures: {} });
  }
  spans.push({ from, to: run.end, seen: "running", figures: {} });
  return joinSpans(spans);
}
