// What is seen over time: one row a thing, the weight of the line says whether it is lit or dark, words say the value, flags the checks.
//
// The same stands in a table, which a phone shows in place of the drawing and a listener hears.
// Does not know: how it was rehearsed.
import type { Lesson } from "../../../bench/lesson/index.ts";
import type { CheckResult, RehearsalResult } from "../../../bench/rehearsal/index.ts";
import { formatAmount, formatNumber, type Language } from "../../../language/index.ts";
import { Table } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { seenWord, seenWords, setWords } from "./lessonWords.ts";
import { isActive, timeRows } from "./spans.ts";

/** The drawing's measures, in its own units (about px at full width). */
const left = 170;
const wide = 740;
const rowHeight = 44;

export interface RehearsalProps {
  readonly lesson: Lesson;
  readonly result: RehearsalResult;
}

export function Rehearsal({ lesson, result }: RehearsalProps) {
  const say = useSay();
  const language = useSession().language.value;
  const rows = timeRows(lesson, result);
  const x = (seconds: number): number => left + (wide * Math.min(seconds, rows.seconds)) / rows.seconds;
  const bands = [
    ...rows.set.map(({ spans }) => ({
      name: say("lessonPage.isSet"),
      spans: spans.map((s) => ({ ...s, words: setWords(language, s.stimulus), heavy: false })),
    })),
    ...rows.parts.map(({ part, spans }) => ({
      name: part,
      spans: spans.map((s) => ({ ...s, words: seenWords(language, s.observation), heavy: isActive(s.observation.seen) })),
    })),
    ...(rows.lines.length === 0
      ? []
      : [{ name: say("lessonPage.text"), spans: rows.lines.map((s) => ({ ...s, words: s.observation.seen, heavy: false })) }]),
  ];
  const height = 30 + bands.length * rowHeight + 46;
  const ticks = tickSeconds(rows.seconds);
  const passed = rows.checks.filter((c) => c.passed).length;
  return (
    <>
      <figure class="wide">
        <svg
          class="chart"
          viewBox={`0 0 ${left + wide + 20} ${height}`}
          role="img"
          aria-label={say("lessonPage.chart", { seconds: rows.seconds, passed, count: rows.checks.length })}
        >
          {ticks.map((t) => (
            <g key={t}>
              <path d={`M${x(t)} 22V${height - 6}`} stroke="var(--faint)" />
              <text x={x(t)} y="14" text-anchor="middle">
                {formatNumber(language, t)}
                {t === ticks.at(-1) ? " s" : ""}
              </text>
            </g>
          ))}
          {bands.map(({ name, spans }, n) => {
            const y = 30 + n * rowHeight + 30;
            let free = 0;
            return (
              <g key={n}>
                <text x={left - 14} y={y + 4} text-anchor="end" font-weight="700">
                  {name}
                </text>
                {spans.map(({ from, to, words, heavy }) => {
                  // A word that would run into the one before is left to the table.
                  const room = x(from) >= free;
                  if (room) free = x(from) + words.length * 8.2 + 14;
                  return (
                    <g key={from}>
                      <path d={`M${x(from)} ${y}H${x(to)}`} stroke="var(--black)" stroke-width={heavy ? 9 : 1.4} />
                      <path d={`M${x(from)} ${y - 6}V${y + 6}`} stroke="var(--black)" stroke-width="1.4" />
                      {room && (
                        <text x={x(from) + 5} y={y - 9} font-weight={heavy ? "700" : undefined}>
                          {words}
                        </text>
                      )}
                    </g>
                  );
                })}
              </g>
            );
          })}
          <Flags checks={rows.checks} x={x} y={height - 8} language={language} />
        </svg>
      </figure>
      <div class="timetable">
        <Table
          caption={say("lessonPage.inWords")}
          head={[
            { says: say("lessonPage.seconds"), numeric: true },
            { says: say("lessonPage.thing") },
            { says: say("lessonPage.seenIs") },
          ]}
        >
          {bands
            .flatMap(({ name, spans }) => spans.map((s) => ({ name, ...s })))
            .sort((a, b) => a.from - b.from)
            .map(({ name, from, words, heavy }) => (
              <tr key={`${name} ${from}`}>
                <td class="num">{formatNumber(language, Number(from.toFixed(2)))}</td>
                <td>{name}</td>
                <td>{heavy ? <b>{words}</b> : words}</td>
              </tr>
            ))}
        </Table>
      </div>
      <Checks checks={rows.checks} />
    </>
  );
}

/** A flag on the time scale where a check begins, whole where it passed, open where not. */
function Flags({
  checks,
  x,
  y,
}: {
  readonly checks: readonly CheckResult[];
  readonly x: (seconds: number) => number;
  readonly y: number;
  readonly language: Language;
}) {
  const say = useSay();
  return (
    <g>
      <text x={left - 14} y={y - 10} text-anchor="end">
        {say("lessonPage.checks")}
      </text>
      <path d={`M${left} ${y}H${left + wide}`} stroke="var(--black)" stroke-width="1.4" />
      {checks.map(({ ms, passed, line }) => (
        <path
          key={line}
          d={`M${x(ms / 1000)} ${y}V${y - 24}l9 5l-9 5`}
          fill={passed ? "var(--black)" : "none"}
          stroke="var(--black)"
          stroke-width="2"
        />
      ))}
    </g>
  );
}

function Checks({ checks }: { readonly checks: readonly CheckResult[] }) {
  const say = useSay();
  const language = useSession().language.value;
  const failed = checks.filter((c) => !c.passed);
  if (failed.length === 0) return <p>{say("lessonPage.allPass", { count: checks.length })}</p>;
  return (
    <ul>
      {failed.map((check) => (
        <li key={check.line}>
          {say(check.undetermined ? "lessonPage.checkUndetermined" : "lessonPage.checkFails", {
            at: formatAmount(language, check.ms / 1000, "s"),
            line: check.line,
            part: check.expected.kind === "part" ? check.expected.part : check.expected.kind,
            expected:
              check.expected.kind === "part" && check.expected.seen !== null ? seenWord(language, check.expected.seen) : "—",
            seen: seenWord(language, check.seen),
          })}
        </li>
      ))}
    </ul>
  );
}

/** About ten marks, at whole steps of 1, 2 or 5. */
function tickSeconds(seconds: number): readonly number[] {
  const rough = seconds / 10;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((n) => n * power).find((n) => n >= rough) ?? power * 10;
  return Array.from({ length: Math.floor(seconds / step + 1e-9) + 1 }, (_, n) => Number((n * step).toFixed(6)));
}
