// A lesson on one page, read from top to bottom: what it teaches, circuit, program, rehearsal, supplies, tray, what can go wrong, plan.
//
// With a class and a day it is the lesson as this class can hold it; without, the lesson as it was written.
// Does not know: how it was rehearsed or planned.
import "./lesson.css";
import "./walk.css";
import "./waves.css";
import { signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useMemo } from "preact/hooks";
import type { Lesson, ProgramFile } from "../../../bench/lesson/index.ts";
import type { Doubt, Hazard, RehearsalResult } from "../../../bench/rehearsal/index.ts";
import { expectedReadings, shownVolts } from "../../../documents/index.ts";
import {
  bandWords,
  countedItem,
  formatDay,
  formatList,
  formatNumber,
  itemName,
  sayProblem,
  sayUnchecked,
} from "../../../language/index.ts";
import type { PlannedLesson } from "../../../school/readiness/index.ts";
import { Button, Message, Page, ProgressRuler, Row, Table, TextLink, Verdict } from "../../pieces/index.ts";
import { troubleOf } from "../../session/answering.ts";
import { lessonText } from "../../session/lessonTitle.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { address, linkTo } from "../../shell/router.ts";
import { PlanWork } from "../course/PlanWork.tsx";
import { Helps, Why } from "../course/Why.tsx";
import { Nowhere } from "../Nowhere.tsx";
import { ByTheClock } from "../today/ByTheClock.tsx";
import { Drift, Supplies, Values } from "./Choices.tsx";
import { legWords } from "./lessonWords.ts";
import { Markdown } from "./Markdown.tsx";
import { Rehearsal } from "./Rehearsal.tsx";
import { settledFor } from "./settled.ts";
import { Walk } from "./Walk.tsx";
import { Waves } from "./Waves.tsx";
import { walkingOf } from "./walking.ts";

export function LessonPlace() {
  const session = useSession();
  const rest = address.value.rest;
  const shipped = session.shipped.value;
  const group = rest.length >= 3 ? session.classFile.value?.classes.find((g) => g.id === rest[0]) : undefined;
  const id = rest.length >= 3 ? rest[1]! : (rest[0] ?? "");
  const meeting = group?.lessons.find((l) => l.lesson === id && l.date === rest[2]);
  const lesson = shipped?.lessons.get(id);
  if (shipped === null) return <Opening />;
  if (lesson === undefined || (rest.length >= 3 && meeting === undefined)) return <Nowhere />;
  const planned =
    (meeting &&
      session.plan.value.value?.lessons.find((l) => l.class === group?.id && l.lesson === id && l.date === meeting.date)) ??
    null;
  return <LessonPage key={address.value.whole} lesson={lesson} planned={planned} isPlanned={meeting !== undefined} />;
}

function Opening() {
  const say = useSay();
  return <Page name={say("shell.opening")} />;
}

interface LessonPageProps {
  readonly lesson: Lesson;
  readonly planned: PlannedLesson | null;
  readonly isPlanned: boolean;
}

function LessonPage({ lesson, planned, isPlanned }: LessonPageProps) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const text = lessonText(lesson, language.tag);
  const title = text?.title || lesson.id;
  // The plan knows nothing of margins: they take a hundred rehearsals a lesson. This one lesson is rehearsed in full beside it.
  const alone = useRehearsal(lesson.id, isPlanned && !session.plan.value.fresh);
  const result = planned?.rehearsal ?? alone.result;
  const plan = session.plan.value;
  // What is being worked out keeps its place, so that nothing jumps away under a finger more than it must.
  const isWaiting = result === null && (isPlanned ? plan.trouble === null && !plan.fresh : alone.isWaiting);
  const coming = isWaiting && <p class="note">{say("lessonPage.isRehearsed")}</p>;
  const section = (name: "teaches" | "introduction" | "questions" | "mistakes" | "follow-up" | "cautions"): string =>
    text?.sections.get(name) ?? "";
  const program = lesson.translatedPrograms?.get(language.tag) ?? lesson.program;
  const lines = linesOf(program);
  const start = planned?.start ?? null;
  const classFile = session.classFile.value;
  const settled = useMemo(() => settledFor(classFile, lesson.id), [classFile, lesson]);
  const sections: readonly Part[] = [
    { id: "aim", heading: say("lessonPage.aim"), body: section("teaches") && <Markdown text={section("teaches")} /> },
    {
      id: "introduction",
      heading: say("section.introduction"),
      body: section("introduction") && <Markdown text={section("introduction")} />,
    },
    { id: "circuit", heading: say("lessonPage.circuit"), body: <Circuit lesson={lesson} /> },
    {
      id: "readings",
      heading: say("lessonPage.readings"),
      note: say("lessonPage.meter"),
      body: result ? <Readings lesson={lesson} result={result} /> : coming,
    },
    {
      id: "program",
      heading: say("lessonPage.program"),
      note: say("lessonPage.lineCount", { count: lines.length }),
      body: <Program lesson={lesson} program={program} />,
    },
    {
      id: "rehearsal",
      heading: say("lessonPage.rehearsal"),
      body: result ? <WhatWasSeen lesson={lesson} result={result} /> : coming,
    },
    { id: "waves", heading: say("waves.heading"), body: <Waves lesson={lesson} settled={settled} /> },
    {
      id: "values",
      heading: say("lessonPage.otherValues"),
      body: result ? (
        <>
          <Values lesson={lesson} result={result} />
          {alone.result ? <Drift lesson={lesson} result={alone.result} /> : alone.told}
        </>
      ) : (
        coming
      ),
    },
    { id: "supplies", heading: say("lessonPage.supplies"), body: result ? <Supplies lesson={lesson} result={result} /> : coming },
    { id: "cautions", heading: say("section.cautions"), body: <Cautions result={result} text={section("cautions")} /> },
    { id: "tray", heading: say("lessonPage.tray"), body: planned && <Tray planned={planned} /> },
    { id: "papers", heading: say("lessonPage.papers"), body: planned && <Papers planned={planned} /> },
    {
      id: "plan",
      heading: say("lessonPage.plan"),
      note: say("lessonPage.minuteCount", { count: lesson.minutes }),
      body:
        start !== null && planned ? (
          <ByTheClock meeting={{ lesson: lesson.id, date: planned.date, start, absent: [] }} />
        ) : (
          <PlanInMinutes lesson={lesson} />
        ),
    },
    { id: "mistakes", heading: say("section.mistakes"), body: section("mistakes") && <Markdown text={section("mistakes")} /> },
    {
      id: "questions",
      heading: say("section.questions"),
      body: section("questions") && <Markdown text={section("questions")} />,
    },
    {
      id: "follow-up",
      heading: say("section.follow-up"),
      body: section("follow-up") && <Markdown text={section("follow-up")} />,
    },
  ];
  const shown = sections.filter((part) => part.body);
  return (
    <Page
      name={title}
      heading={<bdi>{title}</bdi>}
      large
      class="lessonpage"
      at={
        <>
          <b>{formatNumber(language, lesson.minutes)}</b> <span class="unit">{say("today.min")}</span>
        </>
      }
      under={
        <>
          <div class="facts">
            {(planned || result) && <Verdict word={planned?.verdict ?? result!.verdict} />}
            {planned && <span>{formatDay(language, planned.date, "weekday")}</span>}
            <span>{say("lessonPage.facts", { parts: lesson.parts.size, nets: lesson.nets.length, lines: lines.length })}</span>
          </div>
          {planned && <Why planned={planned} />}
          {planned && <Helps planned={planned} />}
          {isPlanned ? <PlanWork /> : alone.told}
          <nav class="index" aria-label={say("lessonPage.onThisPage")}>
            {shown.map(({ id, heading }) => (
              <TextLink key={id} onPress={() => showSection(id)}>
                {heading}
              </TextLink>
            ))}
          </nav>
        </>
      }
    >
      {shown.map(({ id, heading, note, body }, n) => (
        <Row
          key={id}
          as="section"
          class="part"
          at={
            <>
              <b>{formatNumber(language, n + 1)}</b>
              {note && (
                <>
                  <br />
                  <span class="note">{note}</span>
                </>
              )}
            </>
          }
        >
          <h2 id={id} tabIndex={-1}>
            {heading}
          </h2>
          {body}
        </Row>
      ))}
    </Page>
  );
}

interface Part {
  readonly id: string;
  readonly heading: string;
  readonly note?: string;
  readonly body: ComponentChildren;
}

const linesOf = (program: ProgramFile): readonly string[] => program.text.replace(/\n$/, "").split("\n");

/** The address stays: the back button belongs to the places. */
function showSection(id: string): void {
  const heading = document.getElementById(id);
  heading?.scrollIntoView();
  heading?.focus({ preventScroll: true });
}

/** A lesson without a day is rehearsed with what the class has, or as it was written where no class is open. */
function useRehearsal(
  id: string,
  mustWait: boolean,
): { readonly result: RehearsalResult | null; readonly told: ComponentChildren; readonly isWaiting: boolean } {
  const session = useSession();
  const say = useSay();
  const state = useMemo(
    () => signal<{ result: RehearsalResult | null; trouble: string | null }>({ result: null, trouble: null }),
    [id],
  );
  const school = session.school.value;
  useEffect(() => {
    if (mustWait) return;
    let isOld = false;
    session
      .run((onProgress) => session.engine.rehearse(id, school, onProgress))
      .then((result) => {
        if (!isOld) state.value = { result, trouble: null };
      })
      .catch((error: unknown) => {
        if (!isOld) state.value = { result: null, trouble: troubleOf(error) };
      });
    return () => {
      isOld = true;
    };
  }, [id, mustWait, school]);
  const { result, trouble } = state.value;
  const progress = session.running.value;
  const told =
    trouble !== null ? (
      <Message live says={say("lessonPage.notRehearsed")} try={sayUnchecked(session.language.value, `engine.${trouble}`)} />
    ) : progress ? (
      <ProgressRuler
        done={progress.done}
        total={progress.total}
        says={sayUnchecked(session.language.value, `engine.${progress.doing}`)}
      />
    ) : result === null && !mustWait ? (
      <p>{say("lessonPage.isRehearsed")}</p>
    ) : null;
  return { result, told, isWaiting: result === null && trouble === null };
}

function Circuit({ lesson }: { readonly lesson: Lesson }) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  return (
    <>
      <Table
        caption={say("lessonPage.partsList")}
        class="parts"
        head={[{ says: say("lessonPage.part") }, { says: say("lessonPage.whatIsIt") }]}
      >
        {[...lesson.parts.values()].map(({ name, item }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>
              {itemName(language, item)}
              {bandWords(language, item) !== "" && <span class="note under">{bandWords(language, item)}</span>}
            </td>
          </tr>
        ))}
      </Table>
      <h3 class="nets">{say("lessonPage.joined")}</h3>
      <ol class="numbers">
        {lesson.nets.map((net) => (
          <li key={net.place.line}>
            {formatList(
              language,
              net.legs.map((leg) => legWords(language, leg)),
            )}
          </li>
        ))}
      </ol>
    </>
  );
}

function Readings({ lesson, result }: { readonly lesson: Lesson; readonly result: RehearsalResult }) {
  const say = useSay();
  const language = useSession().language.value;
  const { moments, points } = expectedReadings(lesson, result.readings, language);
  if (points.length === 0) return <p>{say("lessonPage.noReadings")}</p>;
  return (
    <Table
      caption={say("lessonPage.readings")}
      class="readings"
      head={[{ says: say("lessonPage.redLead") }, ...moments.map((moment) => ({ says: moment, numeric: true }))]}
    >
      {points.map(({ name, volts }) => (
        <tr key={name}>
          <th scope="row">{name}</th>
          {volts.map((value, n) => (
            <td key={moments[n]} class="num">
              {shownVolts(language, value)} <span class="unit">V</span>
            </td>
          ))}
        </tr>
      ))}
    </Table>
  );
}

function Program({ lesson, program }: { readonly lesson: Lesson; readonly program: ProgramFile }) {
  const session = useSession();
  const say = useSay();
  const walking = walkingOf(session, lesson, program);
  const isOpen = walking.isOpen.value;
  return (
    <>
      <div class="acts">
        <Button onPress={() => walking.setOpen(!isOpen)}>{say(isOpen ? "walkPage.close" : "walkPage.open")}</Button>
        <TextLink to={linkTo("lines", ...address.value.rest)}>{say("walkPage.onWall")}</TextLink>
        <TextLink to={linkTo("explain")}>{say("explainPage.name")}</TextLink>
      </div>
      {isOpen ? (
        <Walk lesson={lesson} walking={walking} />
      ) : (
        <div class="bleed">
          <ol class="program">
            {linesOf(program).map((line, n) => (
              <li key={n}>
                <code>{line}</code>
              </li>
            ))}
          </ol>
        </div>
      )}
    </>
  );
}

function WhatWasSeen({ lesson, result }: { readonly lesson: Lesson; readonly result: RehearsalResult }) {
  const language = useSession().language.value;
  return (
    <>
      {result.problems.map((problem) => {
        const { says, try: tries } = sayProblem(language, problem);
        return <Message key={`${problem.code} ${problem.line}`} says={says} try={tries} number={problem.code} />;
      })}
      {result.observations.length > 0 && <Rehearsal lesson={lesson} result={result} />}
    </>
  );
}

function Cautions({ result, text }: { readonly result: RehearsalResult | null; readonly text: string }) {
  const say = useSay();
  const language = useSession().language.value;
  return (
    <>
      {worstFirst(result?.hazards ?? []).map((hazard) => (
        <div key={`${hazard.code} ${hazard.part}`} class="message hazard">
          <p>
            <b>{say("lessonPage.isHazard", { severity: say(`severity.${hazard.severity}`) })}</b>{" "}
            {sayUnchecked(language, `hazard.${hazard.code}`, { ...hazard })}
          </p>
          <p>
            <b>{say("lessonPage.doNow")}</b> {sayUnchecked(language, `hazardTry.${hazard.code}`, { ...hazard })}
          </p>
          <p class="note">{say("rehearsing.limitFrom", { source: hazard.source })}</p>
        </div>
      ))}
      {result?.hazards.some((h) => h.severity === "unsafe") && <p>{say("lessonPage.notBefore")}</p>}
      {result && result.doubts.length > 0 && (
        <>
          <h3>{say("rehearsing.doubts")}</h3>
          {result.doubts.map((doubt) => (
            <div key={`${doubt.code} ${doubt.place}`} class="message hazard doubt">
              <p>{sayUnchecked(language, `doubt.${doubt.code}`, doubtData(doubt))}</p>
              <p>
                <b>{say("lessonPage.doNow")}</b> {sayUnchecked(language, `doubtTry.${doubt.code}`, doubtData(doubt))}
              </p>
            </div>
          ))}
        </>
      )}
      {result && result.hazards.length === 0 && <p>{say("lessonPage.noHazards")}</p>}
      {text !== "" && <Markdown text={text} />}
    </>
  );
}

const doubtData = (doubt: Doubt) => ({ ...doubt, supply: doubt.place, steps: Math.ceil(doubt.steps ?? 0) });

/** What is unsafe before what is a caution; each kind in the order in which it was found. */
function worstFirst(hazards: readonly Hazard[]): readonly Hazard[] {
  return [...hazards.filter((h) => h.severity === "unsafe"), ...hazards.filter((h) => h.severity !== "unsafe")];
}

function Tray({ planned }: { readonly planned: PlannedLesson }) {
  const say = useSay();
  const language = useSession().language.value;
  const alike = new Map<
    string,
    { readonly teams: number[]; readonly things: readonly string[]; readonly missing: readonly string[] }
  >();
  for (const { team, items, missing } of planned.trays) {
    const things = items.map((i) => countedItem(language, i.item, i.count));
    const lacking = missing.map((m) => countedItem(language, m.item, m.count));
    const key = JSON.stringify([things, lacking]);
    alike.set(key, { teams: [...(alike.get(key)?.teams ?? []), team], things, missing: lacking });
  }
  return (
    <>
      {[...alike].map(([key, { teams, things, missing }]) => (
        <div key={key} class="tray">
          <h3>{say("lessonPage.trayOf", { teams, count: teams.length })}</h3>
          <ul class="dots">
            {things.map((thing) => (
              <li key={thing}>{thing}</li>
            ))}
            {missing.map((thing) => (
              <li key={thing}>
                <b>{say("lessonPage.missing", { thing })}</b>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </>
  );
}

function Papers({ planned: { class: group, lesson, date } }: { readonly planned: PlannedLesson }) {
  const say = useSay();
  return (
    <div class="acts">
      <Button to={linkTo("print", "all", group, lesson, date)}>{say("today.printAll")}</Button>
      <TextLink to={linkTo("print", "run-sheet", group, lesson, date)}>{say("lessonPage.runSheet")}</TextLink>
      <TextLink to={linkTo("print", "tray", group, lesson, date)}>{say("lessonPage.trayLists")}</TextLink>
    </div>
  );
}

function PlanInMinutes({ lesson }: { readonly lesson: Lesson }) {
  const say = useSay();
  const language = useSession().language.value;
  return (
    <Table
      caption={say("lessonPage.plan")}
      class="parts"
      head={[{ says: say("lessonPage.minutes"), numeric: true }, { says: say("lessonPage.whatIsDone") }]}
    >
      {lesson.plan.map(({ what, minutes, mayBeDropped }, n) => (
        <tr key={n}>
          <td class="num">{formatNumber(language, minutes)}</td>
          <td>
            {say(`activity.${what}`)}
            {mayBeDropped && <span class="note"> {say("today.mayBeDropped")}</span>}
          </td>
        </tr>
      ))}
    </Table>
  );
}
