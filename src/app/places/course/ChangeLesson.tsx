// One lesson of the course moved a place, moved to another day or time, or taken out.
//
// The lesson may be moved by keys alone: earlier and later change places with its neighbour, and both keep their days.
// Does not know: whether the new day does; the class file says it.
import { useState } from "preact/hooks";
import type { Day } from "../../../base/index.ts";
import { formatClock } from "../../../language/index.ts";
import { Button, DayField, Field, Problem, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { readClock } from "../cupboard/readTyped.ts";
import { type CourseRow, swapped } from "./courseRows.ts";

export interface ChangeLessonProps {
  readonly row: CourseRow;
  readonly rows: readonly CourseRow[];
  readonly group: string;
  readonly title: string;
  readonly onDone: () => void;
}

export function ChangeLesson({ row, rows, group, title, onDone }: ChangeLessonProps) {
  const session = useSession();
  const say = useSay();
  const { meeting } = row;
  const [date, setDate] = useState<Day | null>(meeting.date);
  const [clock, setClock] = useState(formatClock(session.language.value, meeting.start));
  const [wrong, setWrong] = useState<"day" | "clock" | null>(null);
  const [problem, setProblem] = useState<{ readonly code: string } | null>(null);
  const sitting = { class: group, lesson: meeting.lesson, date: meeting.date };
  const done = (answer: { readonly code: string } | null): void => {
    setProblem(answer);
    if (answer === null) onDone();
  };
  const move = (): void => {
    const start = readClock(clock);
    setWrong(date === null ? "day" : start === null ? "clock" : null);
    if (date !== null && start !== null) done(session.act({ kind: "move-lesson", sitting, date, start }));
  };
  const at = rows.indexOf(row);
  return (
    <form
      class="changing"
      aria-label={say("course.changeOf", { title })}
      onSubmit={(event) => {
        event.preventDefault();
        move();
      }}
    >
      <div class="acts">
        {([-1, 1] as const).map((by) => {
          const lessons = swapped(rows, at, by);
          return (
            lessons && (
              <Button key={by} onPress={() => done(session.act({ kind: "order-lessons", class: group, lessons }))}>
                {say(by === -1 ? "course.earlier" : "course.later")}
              </Button>
            )
          );
        })}
        <TextLink onPress={() => done(session.act({ kind: "remove-lesson", sitting }))}>{say("course.remove")}</TextLink>
      </div>
      <DayField
        label={say("course.day")}
        value={date}
        onChange={setDate}
        problem={wrong === "day" ? say("course.noSuchDay") : null}
      />
      <Field
        label={say("course.begins")}
        width="short"
        value={clock}
        onInput={setClock}
        problem={wrong === "clock" ? say("course.noSuchTime") : null}
      />
      {problem && <Problem problem={problem} live />}
      <Button submit>{say("course.move")}</Button>
    </form>
  );
}
