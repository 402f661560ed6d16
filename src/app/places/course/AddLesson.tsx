// Adds a lesson to the course: one of those that come with Benchday, a day, a time.
//
// Day and time begin as the course goes on: as many days after the last lesson as that one came after its forerunner.
// Does not know: whether the day does; the class file says it.
import { useState } from "preact/hooks";
import { addDays, type Day, daysBetween } from "../../../base/index.ts";
import { formatClock } from "../../../language/index.ts";
import { type ClassGroup, meetingsOf } from "../../../school/file/index.ts";
import { Button, Choice, DayField, Field, Problem, Row } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { readClock } from "../cupboard/readTyped.ts";
import { planWords } from "./sayPlan.ts";

/** Days between two lessons where a course has none yet, and minutes after midnight at which a first one begins. */
const usual = { days: 7, start: 9 * 60 };

export function AddLesson({ group }: { readonly group: ClassGroup }) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const proposed = proposal(group, session.today.value);
  const [lesson, setLesson] = useState<string | null>(null);
  const [date, setDate] = useState<Day | null>(null);
  const [clock, setClock] = useState<string | null>(null);
  const [wrong, setWrong] = useState<"lesson" | "day" | "clock" | null>(null);
  const [problem, setProblem] = useState<{ readonly code: string } | null>(null);
  const [isCleared, setCleared] = useState(false);
  const words = planWords(language, session.shipped.value);
  const held = new Set(group.lessons.map((l) => l.lesson));
  const lessons = [...(session.shipped.value?.lessons.keys() ?? [])].sort((a, b) =>
    held.has(a) === held.has(b) ? words.title(a).localeCompare(words.title(b), language.intl) : held.has(a) ? 1 : -1,
  );
  const shownClock = clock ?? formatClock(language, proposed.start);
  const shownDay = date ?? (isCleared ? null : proposed.date);
  const add = (): void => {
    const start = readClock(shownClock);
    setWrong(lesson === null ? "lesson" : shownDay === null ? "day" : start === null ? "clock" : null);
    if (lesson === null || shownDay === null || start === null) return;
    const answer = session.act({ kind: "add-lesson", sitting: { class: group.id, lesson, date: shownDay }, start });
    setProblem(answer);
    if (answer !== null) return;
    setLesson(null);
    setDate(null);
    setClock(null);
    setCleared(false);
  };
  return (
    <Row as="section" id="add-lesson" class="sectionhead">
      <h2>{say("course.add")}</h2>
      <form
        class="changing"
        onSubmit={(event) => {
          event.preventDefault();
          add();
        }}
      >
        <Choice
          label={say("course.which")}
          as="list"
          value={lesson}
          onChange={setLesson}
          none={say("course.chooseOne")}
          options={lessons.map((id) => ({
            value: id,
            label: held.has(id) ? say("course.heldAlready", { title: words.title(id) }) : words.title(id),
          }))}
          problem={wrong === "lesson" ? say("course.noLesson") : null}
        />
        <DayField
          label={say("course.day")}
          value={shownDay}
          onChange={(day) => {
            setDate(day);
            setCleared(day === null);
          }}
          problem={wrong === "day" ? say("course.noSuchDay") : null}
        />
        <Field
          label={say("course.begins")}
          width="short"
          value={shownClock}
          onInput={setClock}
          problem={wrong === "clock" ? say("course.noSuchTime") : null}
        />
        {problem && <Problem problem={problem} live />}
        <Button submit>{say("course.addIt")}</Button>
      </form>
    </Row>
  );
}

function proposal(group: ClassGroup, today: Day): { readonly date: Day; readonly start: number } {
  const meetings = meetingsOf(group);
  const [last, before] = [meetings.at(-1), meetings.at(-2)];
  if (!last) return { date: addDays(today, usual.days), start: usual.start };
  const gap = before && before.date < last.date ? daysBetween(before.date, last.date) : usual.days;
  const date = addDays(last.date, gap);
  return { date: date < today ? addDays(today, usual.days) : date, start: last.start };
}
