// The course: every lesson of the class on its day, whether it can be taught, why not, and what helps.
//
// The bench line takes the line type of each lesson: where it is whole, the lesson can be taught.
// Does not know: how a verdict is found, how a change is done.
import "./course.css";
import { useState } from "preact/hooks";
import { formatDay, formatNumber } from "../../../language/index.ts";
import type { Change } from "../../../school/changes/index.ts";
import { Button, LastAct, Nothing, Page, Row, shortDay, TextLink, Verdict } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { linkTo } from "../../shell/router.ts";
import { PowerCuts } from "../cupboard/PowerCuts.tsx";
import { AddLesson } from "./AddLesson.tsx";
import { ChangeLesson } from "./ChangeLesson.tsx";
import { type CourseRow, courseRows, firstOrderDay, legendOf } from "./courseRows.ts";
import { PlanWork } from "./PlanWork.tsx";
import { saveCalendar } from "./saveCalendar.ts";
import { planWords } from "./sayPlan.ts";
import { Helps, Why } from "./Why.tsx";

export function Course() {
  const session = useSession();
  const say = useSay();
  const [onlyReady, setOnlyReady] = useState(false);
  const [changing, setChanging] = useState<string | null>(null);
  const language = session.language.value;
  const group = session.group.value;
  const classFile = session.classFile.value;
  if (group === null || classFile === null) return null;
  const rows = courseRows(group, session.plan.value.value, session.today.value);
  const legend = legendOf(rows);
  const toCome = rows.filter((row) => !row.isPast).length;
  const ready = legend.find((entry) => entry.word === "ready")?.count ?? 0;
  const orderBy = firstOrderDay(rows);
  const others = classFile.classes.filter((other) => other.id !== group.id);
  const shown = onlyReady ? rows.filter((row) => row.planned?.verdict === "ready" && !row.isPast) : rows;
  if (rows.length === 0)
    return (
      <Page
        name={say("course.heading", { name: group.name })}
        under={
          <Nothing
            says={say("course.empty")}
            will={say("course.emptyWill")}
            first={{
              label: say("course.add"),
              onPress: () => document.querySelector<HTMLElement>("#add-lesson select")?.focus(),
            }}
          />
        }
      >
        <AddLesson group={group} />
      </Page>
    );
  return (
    <Page
      name={say("shell.course")}
      heading={say("course.headingOf", { name: group.name, count: rows.length })}
      at={
        <>
          <b>{formatNumber(language, rows.length)}</b> <span class="unit">{say("course.lessons", { count: rows.length })}</span>
        </>
      }
      under={
        <>
          <p class="intro">{say("course.intro", { taught: rows.length - toCome, toCome, ready })}</p>
          <PlanWork />
          <div class="legend">
            {legend.map(({ word, count }) => (
              <Verdict key={word} word={word} calm>
                {formatNumber(language, count)} {say(`verdict.${word}`)}
              </Verdict>
            ))}
          </div>
          <div class="acts">
            {orderBy !== null && (
              <Button to={linkTo("order")}>{say("course.orderBy", { by: formatDay(language, orderBy, "short") })}</Button>
            )}
            <TextLink pressed={onlyReady} onPress={() => setOnlyReady(!onlyReady)}>
              {say("course.onlyReady")}
            </TextLink>
            <TextLink onPress={() => void saveCalendar(session)}>{say("course.calendar")}</TextLink>
          </div>
        </>
      }
    >
      <Row at={<bdi>{group.name}</bdi>} tick={false} class="lesson cols note">
        <span class="no">{say("course.no")}</span>
        <span>{say("course.lesson")}</span>
        <span>{say("course.readyAndWhy")}</span>
        <span>{say("course.whatHelps")}</span>
        <span>{others.length > 0 && say("course.otherClasses")}</span>
      </Row>
      {onlyReady && shown.length === 0 && (
        <Row>
          <p>{say("course.noneReady")}</p>
        </Row>
      )}
      {shown.map((row) => {
        const key = `${row.meeting.lesson} ${row.meeting.date}`;
        return (
          <LessonRow
            key={key}
            row={row}
            rows={rows}
            group={group.id}
            isChanging={changing === key}
            onChanging={(on) => setChanging(on ? key : null)}
          />
        );
      })}
      <Row>
        <LastAct
          about={(change) =>
            (change.kind.endsWith("-lesson") || change.kind === "order-lessons") &&
            !shown.some((row) => isOf(change, group.id, row.meeting.lesson))
          }
        />
      </Row>
      {!onlyReady && <AddLesson group={group} />}
      <Row class="sectionhead">
        <h2>{say("course.powerCuts")}</h2>
      </Row>
      <PowerCuts />
    </Page>
  );
}

/** An act on this lesson is told in its own row, as long as there is one. */
const isOf = (change: Change, group: string, lesson: string): boolean =>
  change.kind.endsWith("-lesson") &&
  "sitting" in change &&
  typeof change.sitting === "object" &&
  change.sitting.class === group &&
  change.sitting.lesson === lesson;

interface LessonRowProps {
  readonly row: CourseRow;
  readonly rows: readonly CourseRow[];
  readonly group: string;
  readonly isChanging: boolean;
  readonly onChanging: (on: boolean) => void;
}

function LessonRow({ row, rows, group, isChanging, onChanging }: LessonRowProps) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const { meeting, planned, isPast, number } = row;
  const title = planWords(language, session.shipped.value).title(meeting.lesson);
  const counted = session.classFile.value?.counts.filter(
    (c) => c.class === group && c.lesson === meeting.lesson && c.date === meeting.date,
  );
  const lost = counted?.reduce((sum, c) => sum + c.out - c.back, 0) ?? 0;
  return (
    <Row
      at={
        <>
          {isPast ? shortDay(language, meeting.date) : <b>{shortDay(language, meeting.date)}</b>}
          {meeting.date === session.today.value && (
            <>
              <br />
              <span class="note">{say("course.today")}</span>
            </>
          )}
        </>
      }
      line={isPast ? "past" : (planned?.verdict ?? "not rehearsed yet")}
      class={isPast ? "lesson past" : "lesson"}
    >
      <span class="no">{formatNumber(language, number)}</span>
      <div>
        <h2 class="name">
          <TextLink to={linkTo("lesson", group, meeting.lesson, meeting.date)}>
            <bdi>{title}</bdi>
          </TextLink>
        </h2>
        {(!isPast || counted?.length === 0) && (
          <TextLink label={say("course.changeOf", { title })} pressed={isChanging} onPress={() => onChanging(!isChanging)}>
            {say("course.change")}
          </TextLink>
        )}
        <LastAct about={(change) => isOf(change, group, meeting.lesson)} />
      </div>
      <div>
        {isPast ? (
          <p>
            {counted === undefined || counted.length === 0 ? say("course.taught") : say("course.taughtCounted", { count: lost })}
          </p>
        ) : planned ? (
          <>
            <Verdict word={planned.verdict} />
            <Why planned={planned} />
          </>
        ) : (
          <p class="note">{say("session.planWorks")}</p>
        )}
      </div>
      <div>{!isPast && planned && <Helps planned={planned} onMove={() => onChanging(true)} />}</div>
      <OtherClasses lesson={meeting.lesson} group={group} />
      {isChanging && <ChangeLesson row={row} rows={rows} group={group} title={title} onDone={() => onChanging(false)} />}
    </Row>
  );
}

/** When the other classes of the file have the same lesson: they take from the same cupboard. */
function OtherClasses({ lesson, group }: { readonly lesson: string; readonly group: string }) {
  const session = useSession();
  const language = session.language.value;
  const meetings = (session.classFile.value?.classes ?? [])
    .filter((other) => other.id !== group)
    .flatMap(({ name, lessons }) => lessons.filter((l) => l.lesson === lesson).map(({ date }) => ({ name, date })));
  return (
    <ul class="note">
      {meetings.map(({ name, date }) => (
        <li key={`${name} ${date}`}>
          <bdi>{name}</bdi>: {shortDay(language, date)}
        </li>
      ))}
    </ul>
  );
}
