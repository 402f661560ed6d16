// Today: the next lesson of the class, whether it can be held, and everything to do before and after it.
//
// One page, read from top to bottom: what and when, by the clock, what to prepare, the teams and who is away, and the count of
// the lesson before. All that can be pressed here is large enough for a thumb.
// Does not know: how a lesson is planned or printed.
import "./today.css";
import { formatClock, formatDay, formatNumber } from "../../../language/index.ts";
import { type ClassGroup, type LessonDate, meetingsOf } from "../../../school/file/index.ts";
import type { PlannedLesson } from "../../../school/readiness/index.ts";
import { Button, Nothing, Page, Row, shortDay, shortWeekday, TextLink, Verdict } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { linkTo } from "../../shell/router.ts";
import { PlanWork } from "../course/PlanWork.tsx";
import { planWords } from "../course/sayPlan.ts";
import { Helps, Why } from "../course/Why.tsx";
import { ByTheClock } from "./ByTheClock.tsx";
import { CountInRow } from "./CountInRow.tsx";
import { distanceTo, meetingToCount, nextMeeting, type OtherLesson, otherLessonsOf } from "./nextMeeting.ts";
import { PrepareList } from "./PrepareList.tsx";
import { Teams } from "./Teams.tsx";

export function Today() {
  const session = useSession();
  const say = useSay();
  const group = session.group.value;
  const classFile = session.classFile.value;
  if (classFile === null || group === null) return null;
  const lessons = session.shipped.value?.lessons;
  const minutesOf = (lesson: string): number => lessons?.get(lesson)?.minutes ?? 0;
  const now = { today: session.today.value, clock: session.clock.value };
  const next = nextMeeting(group, minutesOf, now);
  const toCount = meetingToCount(classFile, group, minutesOf, now);
  const others = otherLessonsOf([now.today, next?.date ?? now.today], classFile, group, minutesOf, now);
  return next === null ? (
    <Page
      name={say("shell.today")}
      class="touch"
      at={<DayAtTheLine />}
      under={
        <Nothing
          says={say("today.noLesson", { name: group.name })}
          will={say("today.noLessonWill")}
          first={{ label: say("today.chooseLessons"), to: linkTo("course") }}
          others={<TextLink to={linkTo("pupils")}>{say("today.toPupils")}</TextLink>}
        />
      }
    >
      {others.length > 0 && <OtherLessons others={others} />}
      {toCount && <CountInRow group={group} meeting={toCount} />}
    </Page>
  ) : (
    <NextLesson group={group} meeting={next} minutes={minutesOf(next.lesson)} others={others} toCount={toCount} />
  );
}

/** Lessons of other classes on this day or the day of the next lesson, each a tap away. */
function OtherLessons({ others }: { readonly others: readonly OtherLesson[] }) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const title = planWords(language, session.shipped.value).title;
  return (
    <ul class="others">
      {others.map(({ group, meeting }) => (
        <li key={`${group.id} ${meeting.date} ${meeting.start}`}>
          {say("today.other", { date: meeting.date, clock: meeting.start, class: group.name })} <bdi>{title(meeting.lesson)}</bdi>
          {". "}
          <TextLink onPress={() => session.chooseGroup(group.id)}>{say("today.showOther", { class: group.name })}</TextLink>
        </li>
      ))}
    </ul>
  );
}

interface NextLessonProps {
  readonly group: ClassGroup;
  readonly meeting: LessonDate;
  readonly minutes: number;
  readonly others: readonly OtherLesson[];
  readonly toCount: LessonDate | null;
}

function NextLesson({ group, meeting, minutes, others, toCount }: NextLessonProps) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const now = { today: session.today.value, clock: session.clock.value };
  const planned =
    session.plan.value.value?.lessons.find(
      (l) => l.class === group.id && l.lesson === meeting.lesson && l.date === meeting.date,
    ) ?? null;
  const title = planWords(language, session.shipped.value).title(meeting.lesson);
  const distance = distanceTo(meeting, minutes, now);
  const days = meetingsOf(group);
  const room = session.classFile.value?.room.name ?? "";
  return (
    <Page
      name={say("shell.today")}
      heading={<bdi>{title}</bdi>}
      large
      class="touch"
      at={<DayAtTheLine />}
      over={
        <p class="note">
          <b>{say(`today.${distance.kind}`, { ...distance })}</b>
          {" · "}
          {meeting.date !== now.today && <>{formatDay(language, meeting.date, "weekday")} · </>}
          {say("today.fromTo", { start: meeting.start, end: meeting.start + minutes })}
          {" · "}
          <bdi>{group.name}</bdi>
          {room !== "" && (
            <>
              {" · "}
              <bdi>{room}</bdi>
            </>
          )}
          {" · "}
          {say("today.lessonOf", { n: days.indexOf(meeting) + 1, count: days.length })}
        </p>
      }
      under={
        <>
          {others.length > 0 && <OtherLessons others={others} />}
          {planned && <NextVerdict planned={planned} />}
          <PlanWork />
          <div class="acts">
            <Button to={linkTo("print", "all", group.id, meeting.lesson, meeting.date)}>{say("today.printAll")}</Button>
            <Button to={linkTo("lesson", group.id, meeting.lesson, meeting.date)}>{say("today.openLesson")}</Button>
            <Button to={linkTo("wall", group.id, meeting.lesson, meeting.date)}>{say("today.showOnWall")}</Button>
            <Button to="#/explain">{say("explainPage.name")}</Button>
          </div>
        </>
      }
    >
      <Row
        at={
          <>
            <b>{formatNumber(language, minutes)}</b> <span class="unit">{say("today.min")}</span>
          </>
        }
        as="section"
        class="clockrow"
      >
        <h2>{say("today.byTheClock", { end: meeting.start + minutes })}</h2>
        <ByTheClock meeting={meeting} />
      </Row>
      <div class="two">
        <section aria-labelledby="prepare">
          <PrepareList planned={planned} title={title} />
          {toCount && <CountInRow group={group} meeting={toCount} />}
        </section>
        <Teams group={group} meeting={meeting} planned={planned} />
      </div>
    </Page>
  );
}

function NextVerdict({ planned }: { readonly planned: PlannedLesson }) {
  const say = useSay();
  const stale = !useSession().plan.value.fresh;
  return (
    <div class="verdict">
      <Verdict word={planned.verdict} large />
      {stale && <p class="note">{say("session.stale")}</p>}
      <Why planned={planned} />
      <Helps planned={planned} />
    </div>
  );
}

/** The clock and the day; the demo has its own day and says so. */
function DayAtTheLine() {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const today = session.today.value;
  return (
    <>
      <b class="clock">{formatClock(language, session.clock.value)}</b>
      <span class="note">
        {shortWeekday(language, today)}
        <br />
        {shortDay(language, today)}
        {session.isDemo.value && (
          <>
            <br />
            {say("today.demoDay", { year: Number(today.slice(0, 4)) })}
          </>
        )}
      </span>
    </>
  );
}
