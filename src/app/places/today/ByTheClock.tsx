// The lesson by the clock: what is done from when to when, as wide as it is long.
//
// Does not know: what is said meanwhile; that stands on the run sheet.
import { formatClock, formatList, formatNumber } from "../../../language/index.ts";
import type { LessonDate } from "../../../school/file/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { stretches } from "./stretches.ts";

/** Minutes from which on a stretch is drawn heavy: most of the lesson happens in it. */
const longFrom = 15;

export function ByTheClock({ meeting }: { readonly meeting: LessonDate }) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const lesson = session.shipped.value?.lessons.get(meeting.lesson);
  if (!lesson) return null;
  const parts = stretches(lesson.plan, meeting.start);
  const dropped = parts.filter((p) => p.mayBeDropped).map((p) => say(`activity.${p.what}`));
  return (
    <>
      <ol class="clockplan">
        {parts.map(({ what, start, minutes, mayBeDropped }) => (
          <li
            key={start}
            style={{ flexGrow: minutes }}
            class={[minutes >= longFrom ? "long" : "", mayBeDropped ? "dropped" : ""].join(" ").trim() || undefined}
          >
            <span class="m">{formatClock(language, start)}</span>
            <b>{say(`activity.${what}`)}</b>
            <span class="m">
              {formatNumber(language, minutes)} {say("today.min")}
            </span>
          </li>
        ))}
      </ol>
      {dropped.length > 0 && <p class="note">{say("today.dropped", { what: formatList(language, dropped) })}</p>}
    </>
  );
}
