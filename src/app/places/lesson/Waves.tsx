// Voltage and current over time, as an oscilloscope would show them: which place, from when, how long a division.
//
// The list of places speaks of parts and pins; the same curve stands as a table of its jumps.
// Does not know: how a curve is worked out.
import { useEffect, useMemo, useState } from "preact/hooks";
import type { Lesson } from "../../../bench/lesson/index.ts";
import type { Probe, Trace, TracedProbe } from "../../../bench/rehearsal/index.ts";
import { across, roundStep, scaleLines, type WaveScale, waveScale, waveShape, withoutNoise } from "../../../documents/index.ts";
import {
  formatAmount,
  formatList,
  formatNumber,
  type Language,
  say as sayIn,
  sayProblem,
  sayUnchecked,
} from "../../../language/index.ts";
import type { BenchQuestion } from "../../engine/benchQuestions.ts";
import { Button, Choice, Field, Message, ProgressRuler, Table, TextLink, Tick } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { makeAsking } from "../questions/makeAsking.ts";
import { legWords, setWords } from "./lessonWords.ts";
import type { Settled } from "./settled.ts";
import { repeatsOf, waveEdges } from "./waveEdges.ts";

type TraceQuestion = BenchQuestion & { readonly ask: "trace" };

export interface WavesProps {
  readonly lesson: Lesson;
  readonly settled: Settled;
}

/** ms a division that can be chosen. */
const steps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000];

export function Waves({ lesson, settled }: WavesProps) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const places = useMemo(() => placesOf(lesson, language), [lesson, language]);
  const [place, setPlace] = useState<string | null>(null);
  const [fromMs, setFromMs] = useState(0);
  const [stepMs, setStepMs] = useState(() => Math.min(5000, roundStep((rehearsed(lesson) * 1000) / across)));
  const [problem, setProblem] = useState<string | null>(null);
  const asking = useMemo(
    () =>
      makeAsking<TraceQuestion, Trace>(
        (question, onProgress) => session.engine.bench(question, onProgress),
        (ms, then) => void setTimeout(then, ms),
      ),
    [session],
  );
  const probe = places.find((p) => p.key === place)?.probe ?? null;
  useEffect(() => {
    if (probe !== null)
      asking.ask({ ask: "trace", lesson: lesson.id, probe, fromMs, toMs: fromMs + across * stepMs, ...settled });
  }, [asking, lesson, probe, fromMs, stepMs, settled]);
  const { value, progress, trouble } = asking.answer.value;
  const move = (by: number) => setFromMs(Math.max(0, fromMs + by * across * stepMs));
  return (
    <div class="waves">
      <Choice
        label={say("waves.place")}
        as="list"
        value={place}
        none={say("waves.choose")}
        options={places.map(({ key, label }) => ({ value: key, label }))}
        onChange={setPlace}
      />
      <div class="window">
        <Field
          label={say("waves.from")}
          width="short"
          keys="decimal"
          value={formatNumber(language, Number((fromMs / 1000).toFixed(6)))}
          problem={problem}
          onChange={(text) => {
            const seconds = Number(text.replace(/\s/g, "").replace(",", "."));
            const fits = text.trim() !== "" && seconds >= 0 && seconds <= 600;
            setProblem(fits ? null : say("walkPage.between", { least: 0, most: 600 }));
            if (fits) setFromMs(seconds * 1000);
          }}
        />
        <Choice
          label={say("waves.aDivision")}
          as="list"
          value={String(stepMs)}
          options={steps.map((ms) => ({ value: String(ms), label: formatAmount(language, ms / 1000, "s") }))}
          onChange={(ms) => setStepMs(Number(ms))}
        />
      </div>
      {lesson.stimuli.length > 0 && (
        <p class="moments">
          {say("waves.begin")}{" "}
          {lesson.stimuli.map((step) => (
            <TextLink key={step.place.line} onPress={() => setFromMs(Math.max(0, step.at * 1000 - stepMs))}>
              {say("walkPage.happensAt", { seconds: step.at, what: step.stimuli.map((s) => setWords(language, s)) })}
            </TextLink>
          ))}
        </p>
      )}
      {probe !== null && (
        <div class="acts ways">
          <Button onPress={() => move(-0.5)}>{say("waves.earlier")}</Button>
          <Button onPress={() => move(0.5)}>{say("waves.later")}</Button>
        </div>
      )}
      {trouble !== null && (
        <Message live says={sayUnchecked(language, `engine.${trouble}`)}>
          <Button onPress={asking.again}>{say("waves.tryAgain")}</Button>
        </Message>
      )}
      {progress && (
        <ProgressRuler
          done={progress.done}
          total={progress.total}
          says={sayUnchecked(language, `engine.${progress.doing}`)}
          onStop={asking.stop}
        />
      )}
      {value?.problems.map((p) => {
        const { says, try: tries } = sayProblem(language, p);
        return <Message key={p.code} says={says} try={tries} number={p.code} />;
      })}
      {probe !== null && value?.probes[0] && <Curve trace={value} line={value.probes[0]} />}
    </div>
  );
}

function rehearsed(lesson: Lesson): number {
  return Math.max(
    1,
    ...lesson.stimuli.map((s) => s.at),
    ...lesson.checks.map(({ when }) => (when.kind === "at" ? when.at : when.kind === "within" ? when.at + when.within : when.to)),
  );
}

interface Place {
  readonly key: string;
  readonly label: string;
  readonly probe: Probe;
}

/** Nets by all that hangs on them, then the current into each leg; of two legs one is enough. */
function placesOf(lesson: Lesson, language: Language): readonly Place[] {
  const volts = lesson.nets.flatMap(({ legs }, n): Place[] => {
    const at = legs.find(({ part }) => part === "board") ?? legs[0];
    if (at === undefined || legs.some(({ part, leg }) => part === "board" && leg === "GND")) return [];
    const joined = formatList(
      language,
      legs.map((leg) => legWords(language, leg)),
    );
    return [{ key: `V ${n}`, label: sayIn(language, "waves.voltageAt", { place: joined }), probe: { at, unit: "V" } }];
  });
  const seen = new Map<string, number>();
  const amps = lesson.nets.flatMap(({ legs }) =>
    legs.flatMap((at): Place[] => {
      const known = seen.get(at.part) ?? 0;
      seen.set(at.part, known + 1);
      const legsOfPart = lesson.nets.flatMap((net) => net.legs).filter((leg) => leg.part === at.part).length;
      if (at.part === "board" ? !/^[DA]\d/.test(at.leg) : known > 0 && legsOfPart <= 2) return [];
      const label =
        at.part === "board"
          ? sayIn(language, "waves.currentOut", { place: legWords(language, at) })
          : legsOfPart <= 2
            ? sayIn(language, "waves.currentThrough", { part: at.part })
            : sayIn(language, "waves.currentInto", { place: legWords(language, at) });
      return [{ key: `A ${at.part}.${at.leg}`, label, probe: { at, unit: "A" } }];
    }),
  );
  return [...volts, ...amps];
}

function Curve({ trace, line }: { readonly trace: Trace; readonly line: TracedProbe }) {
  const say = useSay();
  const language = useSession().language.value;
  const [isClose, setClose] = useState(false);
  if (line.points.length === 0) return <p>{say("waves.neverHeld")}</p>;
  const scale = waveScale(line.least, line.most, isClose);
  const stepSeconds = (trace.toMs - trace.fromMs) / 1000 / across;
  const scales = say("waves.scales", {
    up: formatAmount(language, scale.step, line.unit),
    along: formatAmount(language, stepSeconds, "s"),
  });
  const height = scale.high - scale.low;
  const edges = waveEdges(line.points, height);
  const amount = (value: number) => formatAmount(language, withoutNoise(value, height), line.unit);
  const isFast = waveShape(line.points, line.gaps, 40).boxes.length > 0;
  const repeats = repeatsOf(edges);
  return (
    <>
      <p role="status">
        {scales}{" "}
        {say("waves.between", {
          least: amount(line.least),
          most: amount(line.most),
        })}{" "}
        {isFast && say("waves.fast")}{" "}
        {repeats && say("waves.repeats", { seconds: repeats.period, hertz: 1 / repeats.period, duty: repeats.duty })}
      </p>
      <figure class="bleed">
        <Picture class="wide" width={1000} height={430} letter={17} trace={trace} line={line} scale={scale} />
        <Picture class="narrow" width={480} height={380} letter={17} trace={trace} line={line} scale={scale} />
      </figure>
      <Tick label={say("waves.closer")} ticked={isClose} onChange={setClose} />
      {line.gaps.length > 0 && <p>{say("waves.gaps", { count: line.gaps.length })}</p>}
      <details>
        <summary>{say("waves.asTable", { count: edges.length })}</summary>
        {edges.length === 0 ? (
          <p>{say("waves.noEdges")}</p>
        ) : (
          <Table
            caption={say("waves.edges")}
            showCaption={edges.length > mostRows}
            class="edges"
            head={[
              { says: say("waves.at"), numeric: true },
              { says: say("waves.fromValue"), numeric: true },
              { says: say("waves.toValue"), numeric: true },
            ]}
          >
            {edges.slice(0, mostRows).map(({ at, from, to }) => (
              <tr key={at}>
                <td class="num">{formatNumber(language, Number((at * 1000).toFixed(3)))}</td>
                <td class="num">{amount(from)}</td>
                <td class="num">{amount(to)}</td>
              </tr>
            ))}
          </Table>
        )}
        {edges.length > mostRows && <p class="note">{say("waves.moreEdges", { count: edges.length - mostRows })}</p>}
      </details>
    </>
  );
}

/** Jumps that are listed; a closer look lists the others. */
const mostRows = 20;

interface PictureProps {
  readonly class: string;
  readonly width: number;
  readonly height: number;
  readonly letter: number;
  readonly trace: Trace;
  readonly line: TracedProbe;
  readonly scale: WaveScale;
}

/** The curve in its frame of divisions. Time runs from left to right in every language, as on the instrument. */
function Picture({ class: own, width, height, letter, trace, line, scale }: PictureProps) {
  const say = useSay();
  const language = useSession().language.value;
  const lines = scaleLines(scale);
  const [left, right, top, bottom] = [letter * 4.6, width - letter, letter, height - letter * 2.4];
  const x = (seconds: number) => left + ((right - left) * (seconds * 1000 - trace.fromMs)) / (trace.toMs - trace.fromMs);
  const y = (value: number) => bottom - ((bottom - top) * (value - scale.low)) / (scale.high - scale.low);
  const shape = waveShape(line.points, line.gaps, Math.round(width / 12));
  const stepMs = (trace.toMs - trace.fromMs) / across;
  const times = Array.from({ length: across + 1 }, (_, n) => trace.fromMs + n * stepMs);
  // On a phone every second time has room.
  const every = width < 600 ? 5 : 2;
  const isShort = stepMs * across < 2000;
  return (
    <svg
      class={`wave ${own}`}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={say("waves.picture", { seconds: trace.fromMs / 1000, toSeconds: trace.toMs / 1000 })}
      direction="ltr"
    >
      {lines.map((value) => (
        <g key={value}>
          <path d={`M${left} ${y(value)}H${right}`} stroke="var(--rule)" stroke-width={value === 0 ? 2 : 0.7} />
          <text x={left - 8} y={y(value) + letter * 0.35} text-anchor="end" font-size={letter}>
            {formatAmount(language, value, line.unit)}
          </text>
        </g>
      ))}
      {times.map((ms, n) => (
        <g key={n}>
          <path d={`M${x(ms / 1000)} ${top}V${bottom}`} stroke="var(--rule)" stroke-width="0.7" />
          {n % every === 0 && (
            <text x={x(ms / 1000)} y={bottom + letter * 1.3} text-anchor={n === across ? "end" : "middle"} font-size={letter}>
              {formatNumber(language, Number((isShort ? ms : ms / 1000).toFixed(3)))}
              {n === across && (isShort ? " ms" : " s")}
            </text>
          )}
        </g>
      ))}
      {shape.boxes.map((box) => (
        <g key={box.from} stroke="var(--black)" fill="none">
          <path d={`M${x(box.from)} ${y(box.most)}H${x(box.to)}V${y(box.least)}H${x(box.from)}Z`} stroke-width="2.6" />
          <path d={hatch(x(box.from), x(box.to), y(box.most), y(box.least))} stroke-width="1" />
        </g>
      ))}
      {shape.lines.map((points, n) => (
        <path
          key={n}
          d={points.map(([s, value], i) => `${i === 0 ? "M" : "L"}${x(s).toFixed(2)} ${y(value).toFixed(2)}`).join("")}
          fill="none"
          stroke="var(--black)"
          stroke-width="2.6"
          stroke-linejoin="round"
        />
      ))}
    </svg>
  );
}

/** Upright lines with room between them: up and down all the time. */
function hatch(from: number, to: number, top: number, bottom: number): string {
  const step = 9;
  return Array.from(
    { length: Math.max(0, Math.floor((to - from) / step)) },
    (_, n) => `M${from + (n + 0.5) * step} ${top}V${bottom}`,
  ).join("");
}
