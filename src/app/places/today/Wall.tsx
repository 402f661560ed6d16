// The lesson's clock for the projector: one thing, large, no names, no prices.
//
// It follows the clock of the timetable, or begins when the teacher says so. Arrow keys step; nothing else moves by itself.
// Does not know: what is built.
import { useEffect, useState } from "preact/hooks";
import { formatClock } from "../../../language/index.ts";
import { lessonTitle } from "../../session/lessonTitle.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { address, goTo, linkTo, pageName } from "../../shell/router.ts";
import { stretchAt, stretches } from "./stretches.ts";

export function Wall() {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const [id = "", lesson = "", date = ""] = address.value.rest;
  const group = session.classFile.value?.classes.find((g) => g.id === id);
  const meeting = group?.lessons.find((l) => l.lesson === lesson && l.date === date);
  const found = session.shipped.value?.lessons.get(lesson);
  const clock = session.clock.value;
  const isNow =
    meeting !== undefined &&
    found !== undefined &&
    date === session.today.value &&
    clock >= meeting.start &&
    clock < meeting.start + found.minutes;
  const [begun, setBegun] = useState<number | null>(isNow && meeting ? meeting.start : null);
  const [stepped, setStepped] = useState<number | null>(null);
  const title = lessonTitle(session.shipped.value, lesson, language.tag);
  const parts = stretches(found?.plan ?? [], begun ?? meeting?.start ?? 0);
  const running = begun === null ? 0 : Math.min(Math.max(0, stretchAt(parts, clock)), parts.length - 1);
  const shown = stepped ?? running;
  const step = (by: number): void => setStepped(Math.min(Math.max(0, shown + by), parts.length - 1));
  useEffect(() => {
    pageName.value = title;
  }, [title]);
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      const forward = language.direction === "rtl" ? "ArrowLeft" : "ArrowRight";
      const back = language.direction === "rtl" ? "ArrowRight" : "ArrowLeft";
      if (event.key === forward || event.key === "ArrowDown") step(1);
      else if (event.key === back || event.key === "ArrowUp") step(-1);
      else if (event.key === "Escape") goTo(linkTo("today"));
      else return;
      event.preventDefault();
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  });
  const part = parts[shown];
  const left = part === undefined ? 0 : begun === null || stepped !== null ? part.minutes : part.start + part.minutes - clock;
  return (
    <main id="main" class="wall">
      <h1 tabIndex={-1}>
        <bdi>{title}</bdi>
      </h1>
      {part ? (
        <div class="now">
          <p class="what">{say(`activity.${part.what}`)}</p>
          <p class="left">{say("today.wallLeft", { minutes: Math.max(0, left) })}</p>
          {begun !== null && <p>{say("today.wallUntil", { end: part.start + part.minutes })}</p>}
          {parts[shown + 1] && <p>{say("today.wallNext", { what: say(`activity.${parts[shown + 1]!.what}`) })}</p>}
        </div>
      ) : (
        <p class="now">{say("today.wallNothing")}</p>
      )}
      <footer>
        <p>
          {say("today.wallStep", { n: shown + 1, count: parts.length })} · {formatClock(language, clock)}
        </p>
        <div class="acts">
          <button type="button" onClick={() => step(-1)}>
            {say("today.wallBack")}
          </button>
          <button type="button" onClick={() => step(1)}>
            {say("today.wallOn")}
          </button>
          <button
            type="button"
            onClick={() => {
              setStepped(null);
              setBegun(begun === null ? clock : null);
            }}
          >
            {say(begun === null ? "today.wallStart" : "today.wallStop")}
          </button>
          <a class="button" href={linkTo("lines", id, lesson, date)}>
            {say("walkPage.onWallShort")}
          </a>
          <a class="button" href={linkTo("today")}>
            {say("today.wallClose")}
          </a>
        </div>
      </footer>
    </main>
  );
}
